using Compat.Validation;

namespace Compat.Snapshots;

/// <content>The records of a site. They are written for its hash only and never read back.</content>
internal sealed partial class SnapshotWriter
{
    /// <summary>The records of a site, for its hash.</summary>
    public static byte[] Body(Site site)
    {
        var writer = new SnapshotWriter();
        writer.Site(site);
        return writer.Finish();
    }

    private void Site(Site x)
    {
        Begin(RecordKind.Site, x.Id);
        Must(x.Name);
        Records(x.Sources, one => one.Id, Source);
        In(x.Here, Conditions);
        Records(x.Levels, one => (one.Device, one.Part), LevelDecision);
        Records(x.Products, one => one.Id, Product);
        Records(x.Devices, one => one.Id, Device);
        Records(x.Rules, one => one.Id, Rule);
    }

    private void Conditions(SiteConditions x)
    {
        MaybeRange(x.Temperature);
        MaybeRange(x.Hardness);
        WordList(x.Water);
        Texts(x.Cloths);
        Texts(x.Gloves);
        Number(x.DryingAir is { } air ? air ? 2 : 1 : 0);
    }

    private void LevelDecision(LevelDecision x)
    {
        Must(x.Device);
        Id(x.Part);
        Word<Level>(x.Level);
        Must(x.DecidedBy);
        Must(x.Because);
        Ids(x.Sources);
    }

    private void Product(Product x)
    {
        Begin(RecordKind.Product, x.Id);
        Must(x.Name);
        Coded(x.Composition);
        Date(x.CompositionDated);
        Coded(x.StrengthOf);
        Figure(x.LiquidShare);
        List(x.Ingredients, i =>
        {
            Id(i.Agent);
            Text(i.Unknown);
            if (i.Strength is { } strength) Strength(strength, nameof(i.Strength));
            else Text(null);
        });
        Figure(x.Density);
        List(x.Ph, ph =>
        {
            Range(ph.Value);
            Coded(ph.Of);
        });
        MaybeRange(x.Dilution);
        MaybeRange(x.Temperature);
        Flag(x.NeedsActivation);
        Methods(x.Methods);
        Records(x.LabelClaims, claim => claim.Id, LabelClaim);
        List(x.ContactTimes, wet =>
        {
            Coded(wet.Method);
            Range(wet.Time);
        });
        WordList(x.Removes);
        Flag(x.OneStep);
        In(x.Life, life =>
        {
            Figure(life.Activated);
            Figure(life.Diluted);
            Figure(life.Opened);
            Flag(life.MayBeRefilled);
        });
        Maybe(x.Bath, bath =>
        {
            Must(bath.Agent);
            In(bath.Use, BathUse);
        });
        Figure(x.MostHardness);
        Texts(x.BoundByCloths);
        Text(x.Note);
    }

    private void Strength(Strength x, string what)
    {
        Must(x.Unit?.Text, what);
        Range(x.Range, what);
    }

    private void LabelClaim(LabelClaim x)
    {
        Must(x.Id);
        In(x.When, SiteClaimBox);
        Word(x.Reaches);
        Targets(x.Kills);
        Targets(x.DoesNotKill);
        Ids(x.For);
        WordList(x.Needs);
        WordList(x.StandsSoil);
        List(x.ShownBy, code => Must(code.Value, ""));
        Maybe(x.Registration, registration =>
        {
            Must(registration.Authority);
            Must(registration.Number);
        });
    }

    private void SiteClaimBox(ClaimBox box)
    {
        Limit(box.Strength);
        Limit(box.Dilution);
        Limit(box.ContactTime);
        Limit(box.Temperature);
        Limit(box.Ph);
        Methods(box.Methods);
    }

    private void Device(Device x)
    {
        Begin(RecordKind.Device, x.Id);
        Must(x.Name);
        List(x.Parts, DevicePart);
        Maybe(x.Patients, patients => WordList(patients, ""));
        List(x.Instructions, Edition);
        Text(x.Note);
    }

    private void DevicePart(DevicePart x)
    {
        Must(x.Id);
        Text(x.Name);
        Ids(x.OneOfTypes);
        MaybeSlots(x.Materials);
        Number(x.MaterialsKnown is { } known ? known ? 2 : 1 : 0);
        Member(x.Wettest);
        Id(x.WettestFrom);
        Member(x.Geometry);
        Member(x.TouchedBy);
        Text(x.Because);
        Maybe(x.Soil, soil => WordList(soil, ""));
        Maybe(x.WhenDismantled, then =>
        {
            Coded(then.Geometry);
            Member(then.Wettest);
            Id(then.From);
            Must(then.How);
        });
    }

    private void Edition(InstructionsEdition x)
    {
        Must(x.Id);
        Date(x.Dated);
        List(x.Serials, serial => Must(serial.Prefix is null ? null : serial.ToString(), ""));
        Ids(x.Replaces);
        Flag(x.OnlyListed);
        Id(x.Source);
        List(x.Says, phrase =>
        {
            Must(phrase.Words);
            Flag(phrase.Forbids);
            Texts(phrase.How);
            Ids(phrase.Parts);
        });
        List(x.Reaches, reached =>
        {
            Ids(reached.Parts);
            Id(reached.Agent);
            Id(reached.Product);
            In(reached.When, SiteClaimBox);
            Word(reached.Reaches);
            Targets(reached.Kills);
            WordList(reached.Needs);
        });
    }
}
