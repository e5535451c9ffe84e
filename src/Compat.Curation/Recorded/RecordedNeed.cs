using Compat.Curation.Reading;

namespace Compat.Curation.Recorded;

/// <summary>What a part needed, as far as it is held against what it needs now.</summary>
/// <param name="Part">The part of the device.</param>
/// <param name="KeptDry">Whether it needed nothing and was kept dry.</param>
/// <param name="Level">The level; null where none was on record.</param>
public sealed record RecordedNeed(DevicePartId Part, bool KeptDry, Level? Level)
{
    /// <summary>Writes down a need.</summary>
    public static RecordedNeed Of(DevicePartId part, Need need) => new(part, need.KeptDry, need.Level);

    internal static RecordedNeed? Read(RecordFields fields) =>
        fields.Id("part", text => new DevicePartId(text)) is { } part
            && fields.Record("need") is { } need ? new(part, need.Yes("keptDry"), need.Word<Level>("level")) : null;
}
