using Compat.Efficacy;
using Compat.Sites;

namespace Compat.Snapshots;

/// <content>The records of a site. They are written for its hash only and never read back.</content>
internal sealed partial class SnapshotWriter
{
    /// <summary>The records of a site, for its hash.</summary>
    public static byte[] Body(Site site)
    {
        var writer = new SnapshotWriter();
        writer.Text(site.Id.Value);
        writer.Text(site.Name);
        writer.List(site.Sources.OrderBy(x => x.Id), writer.Source);
        writer.Conditions(site.Here);
        writer.List(site.Levels.OrderBy(x => x.Device).ThenBy(x => x.Part), writer.LevelDecision);
        writer.List(site.Products.OrderBy(x => x.Id), writer.Product);
        writer.List(site.Devices.OrderBy(x => x.Id), writer.Device);
        writer.List(site.Rules.OrderBy(x => x.Id), writer.Rule);
        return writer.Finish();
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
        Id(x.Device);
        Id(x.Part);
        Word<Level>(x.Level);
        Text(x.DecidedBy);
        Text(x.Because);
        Ids(x.Sources);
    }

    private void Product(Product x)
    {
        Id(x.Id);
        Text(x.Name);
        Number((int)x.Composition);
        Date(x.CompositionDated);
        Number((int)x.StrengthOf);
        Figure(x.LiquidShare);
        List(x.Ingredients, i =>
        {
            Id(i.Agent);
            Text(i.Unknown);
            Text(i.Strength?.Unit.Text);
            if (i.Strength is { } strength) Range(strength.Range);
        });
        Figure(x.Density);
        List(x.Ph, ph =>
        {
            Range(ph.Value);
            Number((int)ph.Of);
        });
        MaybeRange(x.Dilution);
        MaybeRange(x.Temperature);
        Flag(x.NeedsActivation);
        Methods(x.Methods);
        List(x.LabelClaims.OrderBy(c => c.Id), LabelClaim);
        List(x.WetTimes, wet =>
        {
            Number((int)wet.Method);
            Range(wet.Time);
        });
        WordList(x.Removes);
        Flag(x.OneStep);
        foreach (var life in new[] { x.Life.Activated, x.Life.Diluted, x.Life.Opened }) Figure(life);
        Flag(x.Life.MayBeRefilled);
        Maybe(x.Bath, bath =>
        {
            Id(bath.Agent);
            BathUse(bath.Use);
        });
        Figure(x.MostHardness);
        Texts(x.BoundByCloths);
        Text(x.Note);
    }

    private void LabelClaim(LabelClaim x)
    {
        Id(x.Id);
        SiteClaimBox(x.When);
        Word(x.Reaches);
        Targets(x.Kills);
        Targets(x.DoesNotKill);
        Ids(x.For);
        WordList(x.Needs);
        WordList(x.StandsSoil);
        Texts(x.ShownBy.Select(code => code.Value));
        Maybe(x.Registration, registration =>
        {
            Text(registration.Authority);
            Text(registration.Number);
        });
    }

    private void SiteClaimBox(ClaimBox box)
    {
        Limit(box.Strength);
        Limit(box.Dilution);
        Limit(box.WetTime);
        Limit(box.Temperature);
        Limit(box.Ph);
        Methods(box.Methods);
    }

    private void Device(Device x)
    {
        Id(x.Id);
        Text(x.Name);
        List(x.Parts, DevicePart);
        Maybe(x.Patients, WordList);
        List(x.Instructions, Edition);
        Text(x.Note);
    }

    private void DevicePart(DevicePart x)
    {
        Id(x.Id);
        Text(x.Name);
        Ids(x.OneOfTypes);
        MaybeSlots(x.Materials);
        Number(x.MaterialsKnown is { } known ? known ? 2 : 1 : 0);
        Member(x.Wettest);
        Id(x.WettestFrom);
        Member(x.Geometry);
        Member(x.TouchedBy);
        Text(x.Because);
        Maybe(x.Soil, WordList);
        Maybe(x.WhenDismantled, then =>
        {
            Number((int)then.Geometry);
            Member(then.Wettest);
            Id(then.From);
            Text(then.How);
        });
    }

    private void Edition(InstructionsEdition x)
    {
        Id(x.Id);
        Date(x.Dated);
        Texts(x.Serials.Select(s => s.ToString()));
        Ids(x.Replaces);
        Flag(x.OnlyListed);
        Id(x.Source);
        List(x.Says, phrase =>
        {
            Text(phrase.Words);
            Flag(phrase.Forbids);
            Texts(phrase.How);
            Ids(phrase.Parts);
        });
        List(x.Reaches, reached =>
        {
            Ids(reached.Parts);
            Id(reached.Agent);
            Id(reached.Product);
            SiteClaimBox(reached.When);
            Word(reached.Reaches);
            Targets(reached.Kills);
            WordList(reached.Needs);
        });
    }
}
