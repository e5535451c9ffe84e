namespace Compat.Deciding;

/// <summary>What keeps an 'allowed' within limits: whatever was assumed, and evidence that is weak or was not seen.</summary>
internal sealed class Limits(Question question, Substance substance, IReadOnlyList<PartVariant> variants)
{
    /// <summary>What keeps every 'allowed' on a part within limits, whatever the rules say.</summary>
    public static IEnumerable<Limit> OfPart(IReadOnlyList<PartVariant> variants)
    {
        if (variants.FirstOrDefault(v => v.Editions.Count == 0)?.Device is { } device) yield return new(LimitCode.InstructionsNotSeen, [device.Id.Value]);
        if (variants[0].MaterialsAlone) yield return new(LimitCode.SealsNotJudged, []);
    }

    /// <summary>Whether a rule that permits keeps the 'allowed' within limits: its source is silent, or it does not say `any` of an axis that was left out.</summary>
    /// <remarks>Only what a rule says counts: one on a class without basis says nothing of strength, one on an agent nothing of dilution.</remarks>
    public static bool Keeps(CompiledRule rule, Axis[] leftOut)
    {
        if (rule.IsSilent) return true;
        foreach (var axis in leftOut)
            if (!rule.SaysAny(axis)) return true;
        return false;
    }

    public IReadOnlyList<Limit> Of(IReadOnlyList<CompiledRule> deciding, bool wellFounded, HashSet<string> restricted)
    {
        var limits = OfPart(variants).ToList();
        LeftOut(question.Method is null, null, "method", substance.Methods.ToString());
        var ofProduct = substance.Product is not null;
        if (ofProduct) LeftOut(substance.DilutionTreatment == AxisTreatment.Free, Axis.Dilution, "dilution", substance.Dilution.Scale(100m).ToString("% v/v"));
        else LeftOut(!substance.StrengthStated, Axis.Strength, "strength", substance.Components[0].Strength.ToString());
        LeftOut(question.ExposureTime is null, Axis.ExposureTime, "exposure-time", "free");
        LeftOut(question.Temperature is null, Axis.Temperature, "temperature", substance.Temperature.ToString("°C"));
        LeftOut(question.Ph is null, Axis.Ph, "ph", substance.WholePh.ToString());
        LeftOut(question.Uses is null, Axis.Uses, "uses", "free");
        foreach (var rule in deciding) Unstated(rule);
        if (!wellFounded) limits.Add(new(LimitCode.WeakEvidence, []));
        return limits;

        void LeftOut(bool isLeftOut, Axis? axis, string name, string taken)
        {
            if (isLeftOut && (restricted.Contains(name) || !deciding.All(rule => rule.SaysAny(axis)))) limits.Add(new(LimitCode.AxisLeftOut, [name, taken]));
        }

        void Unstated(CompiledRule rule)
        {
            foreach (var axis in rule.Rule.When.SilentOn)
                limits.Add(new(LimitCode.SourceDoesNotSay, [Words.Of(axis), rule.Box[axis].ToInterval().ToString(axis == Axis.ExposureTime ? "s" : ""), rule.Rule.Id.Value]));
            if (rule.Rule.When.Methods.Statement == AxisStatement.Unstated)
                limits.Add(new(LimitCode.SourceDoesNotSay, ["method", rule.Methods.ToString(), rule.Rule.Id.Value]));
        }
    }
}
