namespace Compat.Answers;

/// <summary>Adds to what the part stands whether what is needed is killed and whether people are harmed. The worst of the three is the verdict: clause
/// W4.</summary>
/// <param name="kb">The knowledge base.</param>
/// <param name="question">The question.</param>
/// <param name="identity">The identity of the data.</param>
/// <param name="asked">The pieces of the question, of which the part's own answer was made.</param>
internal sealed class WholeJudgement(CompiledBase kb, Question question, IReadOnlyList<DataIdentity> identity, Asked asked)
{
    public Answer Of(Answer part)
    {
        var need = NeedMaker.Of(kb, question);
        if (WithoutWindow(need) is { } plain)
        {
            var people = plain.Verdict == Verdict.NotAllowed ? null : PeopleOf(new WindowGround(kb, question, need, measured: true, asked: asked));
            return Worst(part, plain, people, null);
        }

        var ground = new WindowGround(kb, question, need, measured: true, asked: asked);
        var window = new WindowMaker(kb, question, ground).Make(identity);
        var harm = PeopleOf(ground);
        return Worst(part, WithoutWeak(KillOf(ground, window, part.Verdict, harm.Verdict), ground, part.Verdict, harm.Verdict), harm, window);
    }

    /// <summary>The judgement where there is nothing to compute; null where there is.</summary>
    public static KillJudgement? WithoutWindow(Need need)
    {
        return need.Prions ? Say(Verdict.NotAllowed, KillReasonCode.Prions)
            : need.SoiledWhereDry ? Say(Verdict.NotAllowed, KillReasonCode.SoiledWhereDry)
            : need.NothingToKill ? Say(Verdict.Allowed, KillReasonCode.NothingToKill)
            : need.Level is null ? Say(Verdict.NotEstablished, KillReasonCode.ContactNotKnown)
            : null;

        KillJudgement Say(Verdict verdict, KillReasonCode code) =>
            new() { Verdict = verdict, Need = need, Reasons = [new KillReason(code, [])], WellFounded = true };
    }

    /// <summary>Clause K11. Weak claims never make it plain 'allowed': it is so only where the other claims alone make it so.</summary>
    private KillJudgement WithoutWeak(KillJudgement kill, WindowGround ground, Verdict part, Verdict people)
    {
        if (kill.Verdict != Verdict.Allowed || !kill.Claims.Any(claim => ground.Methods.Any(method => LabelTests.Weak(claim, method) is not null))) return kill;
        var strong = new WindowGround(ground);
        var verdict = KillOf(strong, new WindowMaker(kb, question, strong).Make(identity), part, people).Verdict;
        return kill with { Verdict = verdict == Verdict.Allowed ? verdict : Verdict.AllowedWithinLimits };
    }

    private KillJudgement KillOf(WindowGround ground, Window window, Verdict part, Verdict people)
    {
        var maker = new WindowMaker(kb, question, ground);
        var boxes = ground.KillBoxes;
        if (boxes.Count == 0)
        {
            var (verdict, reasons) = new KillReasons(ground).Of();
            return new() { Verdict = verdict, Need = ground.Need, Reasons = reasons };
        }

        var closedByPeople = people == Verdict.NotAllowed && window.Closure?.Code == ClosureCode.HarmsPeople;
        var askedTooShort = !boxes.Any(box => maker.Fits(box.Box));
        if (askedTooShort || (!window.IsOpen && part >= Verdict.AllowedWithinLimits && !closedByPeople))
            return new()
            {
                Verdict = Verdict.NotAllowed,
                Need = ground.Need,
                Reasons = [new KillReason(KillReasonCode.WindowClosed, []), .. new KillReasons(ground).InMachine()],
                Claims = window.Closure!.Claims
            };
        var perBox = boxes.Select(box => maker.ClaimsIn(box).Select(claim => claim.Claim).Distinct().ToArray()).ToArray();
        var claims = perBox.SelectMany(some => some).Distinct().ToArray();
        var leftOut = perBox.Zip(boxes, (some, box) => KillExceptions.Of(kb, ground.Need, some, box.Method)).SelectMany(some => some).Distinct().ToArray();
        var weak = boxes.SelectMany(maker.WeakIn).GroupBy(reason => (reason.Code, reason.Arguments[0]), (_, same) => same.First());
        var wellFounded = claims.Any(claim => claim.WellFounded);
        var everywhere = ground.Methods.All(method => boxes.Any(box => box.Method == method && IsWhole(ground, box.Box)));
        var plain = everywhere && wellFounded && leftOut.Length == 0 && question.ExposureTime is not null
            && !(ground.Substance.Product is not null && claims.All(claim => claim.Origin == ClaimOrigin.Published));
        return new()
        {
            Verdict = plain ? Verdict.Allowed : Verdict.AllowedWithinLimits,
            Need = ground.Need,
            Reasons = [new KillReason(KillReasonCode.ClaimsMeet, claims.Select(claim => claim.Id).ToArray()),
                .. leftOut.Select(one => new KillReason(KillReasonCode.NotCovered, [one.Organism.Value, one.Claim])), .. weak],
            Claims = claims,
            WellFounded = wellFounded,
        };
    }

    /// <summary>Whether a box leaves out no choice but the contact times that are too short.</summary>
    private static bool IsWhole(WindowGround ground, in Box<Stretch> box) =>
        (ground.Domain with { Methods = box.Methods, ContactTime = box.ContactTime }).LiesIn(box);

    private static PeopleJudgement PeopleOf(WindowGround ground)
    {
        var forbidding = ground.PersonRules.Where(rule => rule.Forbids).ToArray();
        var asked = ground.Methods.Count > 0 ? ground.Substance : ground.Substance with { Methods = ground.MethodsAsked };
        var left = asked.Methods.IsEmpty || asked.Methods.Methods.Any(method => ground.Boxes(method, ground.PeopleHoles(method)).Count > 0);
        var verdict = !left ? Verdict.NotAllowed
            : asked.IsNothing ? Verdict.NotEstablished
            : ground.PersonRules.Count > 0 || ground.Silent.Count > 0 || ground.Substance.Product is { Composition: not Model.Composition.Full }
                ? Verdict.AllowedWithinLimits
            : Verdict.Allowed;
        return new()
        {
            Verdict = verdict,
            Patients = ground.Need.Patients,
            Rules = ground.PersonRules.OrderBy(rule => !rule.Forbids).Select(rule => rule.Rule).Distinct().ToArray(),
            Forbidding = forbidding.Select(rule => rule.Rule.Id).Distinct().ToArray(),
            Silent = ground.Silent,
        };
    }

    private static Answer Worst(Answer part, KillJudgement kill, PeopleJudgement? people, Window? window)
    {
        var verdict = part.PartVerdict;
        if (kill.Verdict < verdict) verdict = kill.Verdict;
        if (people?.Verdict < verdict) verdict = people.Verdict;
        return part with { Verdict = verdict, Kill = kill, People = people, Window = window };
    }
}
