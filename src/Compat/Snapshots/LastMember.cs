using Compat.Knowledge;

namespace Compat.Snapshots;

/// <summary>
/// The last member of each enumeration a snapshot may hold; members count from 0 without gaps. Written out rather than asked of the runtime,
/// which takes longer than reading all the records. A test holds it against the enumerations.
/// </summary>
internal static class LastMember
{
    public const Act Act = Knowledge.Act.Rub;
    public const ApplicationMethod ApplicationMethod = Exposures.ApplicationMethod.Chamber;
    public const AxisStatement AxisStatement = Exposures.AxisStatement.Within;
    public const Consequence Consequence = Knowledge.Consequence.Patient;
    public const ConventionKey ConventionKey = Knowledge.ConventionKey.IngressImmerse;
    public const Delicacy Delicacy = Knowledge.Delicacy.Thin;
    public const DutyKind DutyKind = Knowledge.DutyKind.Discard;
    public const Geometry Geometry = Knowledge.Geometry.Lumen;
    public const Hazard Hazard = Knowledge.Hazard.Burns;
    public const KnownBy KnownBy = Knowledge.KnownBy.Practice;
    public const Mechanism Mechanism = Knowledge.Mechanism.HeatDistortion;
    public const Nature Nature = Knowledge.Nature.Oil;
    public const Onset Onset = Knowledge.Onset.Cumulative;
    public const Residue Residue = Knowledge.Residue.Salts;
    public const SourceKind SourceKind = Knowledge.SourceKind.CommonPractice;
    public const TestPiece TestPiece = Knowledge.TestPiece.Device;
    public const TouchedBy TouchedBy = Knowledge.TouchedBy.SterileTissue;
    public const Trust Trust = Knowledge.Trust.Weak;
    public const WaterGrade WaterGrade = Knowledge.WaterGrade.Sterile;
}
