namespace Compat.Answers;

/// <summary>One person rule as it speaks of one component of a substance.</summary>
internal sealed record PersonRuleOnAxes(PersonRule Rule, Component Component, MethodSet Methods, IReadOnlyList<Box<Stretch>> Holes)
{
    /// <summary>A duty that no way the part stands can meet; null where all can be met, or the rule forbids.</summary>
    public Duty? Unmet { get; init; }

    public bool Forbids => Rule.Verdict == PersonVerdict.NotAllowed || Unmet is not null;
}

/// <summary>Finds what person rules say of a substance on a part for the patients of a need: clauses H1 to H5.</summary>
internal sealed class PeopleGround(CompiledBase kb, Question question, Substance substance, IReadOnlyList<PartVariant> variants, Need need)
{
    /// <summary>The rules that speak, each with the exposures at which it does.</summary>
    public IReadOnlyList<PersonRuleOnAxes> Rules()
    {
        var found = new List<PersonRuleOnAxes>();
        foreach (var rule in kb.Data.PersonRules.OrderBy(rule => rule.Id))
        {
            if (!Reach.IsForPatients(rule, need.Patients, need.Occupied) || !Reach.IsFor(kb, rule.For, variants)) continue;
            foreach (var component in substance.Components)
            {
                if (!Reach.Names(kb, rule.Agent, component)) continue;
                var methods = rule.When.Methods.Statement == AxisStatement.Within ? rule.When.Methods.Methods : MethodSet.All;
                var holes = Laid(rule, component, methods).ToArray();
                if (holes.Length == 0) continue;
                found.Add(new PersonRuleOnAxes(rule, component, methods, holes)
                {
                    Unmet = rule.Duties
                    .FirstOrDefault(duty => variants.Any(v => !v.CanMeet(duty)))
                });
            }
        }

        return found;
    }

    /// <summary>The patients for whom no person rule speaks of a component, of those that a residue may harm: what nobody wrote is no permission.</summary>
    public IReadOnlyList<(string Component, PatientGroup Patient)> Silent() =>
        (from component in substance.Components
         where !component.OnlyForbids
         let name = component.Unknown ? component.Name ?? "" : kb.Data.Agents[component.Agent].Id.Value
         from patient in need.Patients
         where component.Unknown || !kb.Data.PersonRules.Any(rule => rule.Patients.Contains(patient) && Reach.Names(kb, rule.Agent, component))
         select (name, patient)).Distinct().ToArray();

    private IEnumerable<Box<Stretch>> Laid(PersonRule rule, Component component, MethodSet methods)
    {
        var box = Box<Stretch>.Of(methods, axis => axis == Axis.ExposureTime ? ExposureTime(rule.When.ExposureTime) : Stretch.Of(rule.When.On(axis)));
        if (!box.Temperature.Meets(Stretch.Of(substance.Temperature))
            || !box.ExposureTime.Meets(Stretch.Of(question.ExposureTime ?? Interval.Above(0m)))
            || !box.Uses.Meets(Stretch.Of(question.Uses is { } n ? Interval.Closed(1m, n) : Interval.AtLeast(1m)))) yield break;
        foreach (var dilution in substance.DilutionsAt(component, box.Strength, box.Ph, Stretch.Whole)) yield return box with { Dilution = dilution };
    }

    /// <summary>The exposure times asked at which a rule speaks: where a variant stands no way to end it, it stays.</summary>
    private Stretch ExposureTime(AxisLimit limit)
    {
        if (limit.Statement != AxisStatement.Within
            || variants.All(v => v.MaterialsAlone || v.EndingWays(substance.LeavesNothing).Count > 0)) return Stretch.Of(limit);
        var stays = substance.LeavesNothing ? kb.Convention(ConventionKey.DryingTime).Range.Upper ?? 0m : Interval.WithoutEnd;
        return limit.Range.Contains(stays) ? Stretch.Whole : Stretch.Of(limit);
    }
}
