namespace Compat.Snapshots;

/// <summary>
/// The last member of each enumeration a snapshot may hold; members count from 0 without gaps. Written out rather than asked of the runtime,
/// which takes longer than reading all the records. A test holds it against the enumerations.
/// </summary>
internal static class LastMember
{
    public const Act Act = Model.Act.Rub;
    public const ApplicationMethod ApplicationMethod = Space.ApplicationMethod.Chamber;
    public const AxisStatement AxisStatement = Space.AxisStatement.Within;
    public const Consequence Consequence = Model.Consequence.Patient;
    public const ConventionKey ConventionKey = Model.ConventionKey.IngressImmerse;
    public const Delicacy Delicacy = Model.Delicacy.Thin;
    public const DutyKind DutyKind = Model.DutyKind.Discard;
    public const Geometry Geometry = Model.Geometry.Lumen;
    public const Hazard Hazard = Model.Hazard.Burns;
    public const KnownBy KnownBy = Model.KnownBy.Practice;
    public const Mechanism Mechanism = Model.Mechanism.HeatDistortion;
    public const Nature Nature = Model.Nature.Oil;
    public const Onset Onset = Model.Onset.Cumulative;
    public const Residue Residue = Model.Residue.Salts;
    public const SourceKind SourceKind = Model.SourceKind.CommonPractice;
    public const TestPiece TestPiece = Model.TestPiece.Device;
    public const TouchedBy TouchedBy = Model.TouchedBy.SterileTissue;
    public const Trust Trust = Model.Trust.Weak;
    public const WaterGrade WaterGrade = Model.WaterGrade.Sterile;
}
