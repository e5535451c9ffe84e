using System.CommandLine;
using Compat.Cli.Json;

namespace Compat.Cli.Commands;

/// <summary><c>compat bath</c>: is this bath, or this opened tub, still good?</summary>
internal sealed class BathCommand : DataCommand
{
    private readonly Option<string?> _product;
    private readonly Option<string?> _claim;
    private readonly Option<string?> _measured;
    private readonly Option<string?> _tested;
    private readonly Option<string?> _passed;
    private readonly Option<string?> _failed;
    private readonly Option<string?> _activated;
    private readonly Option<string?> _diluted;
    private readonly Option<string?> _opened;
    private readonly Option<string?> _expires;
    private readonly Option<string?> _refilled;
    private readonly Option<string?> _tub;
    private readonly Option<string?> _today;

    public BathCommand()
        : base(
            "bath",
            "Says whether a bath of disinfectant, or an opened tub or bottle, is still good: use or discard, with the reason.",
            new("A bath of glutaraldehyde, activated ten days ago and measured today",
                "compat bath --claim glutaraldehyde.high.45-min --activated \"10 days ago\" --measured \"1.8 % w/v\" --expires 2030-01-31"),
            new("A tub of wipes that was filled again",
                "compat bath --site data/demo/eye-screening-clinic.yaml --product plain-quat-wipe --tub --opened \"3 days ago\" --refilled"))
    {
        _product = One("--product", "ID", "A product of a site: its label's figures count");
        _claim = One("--claim", "ID", "A published claim whose bath it is, where it is no product of a site");
        _measured = One("--measured", "FIGURE", "The strength measured today: \"1.8 % w/v\", or a range");
        _tested = One("--tested", "DAY", "The day of the last test strip");
        _passed = Flag("--passed", "The last test passed");
        _failed = Flag("--failed", "The last test failed");
        _activated = One("--activated", "DAY", "When it was activated: 2026-11-10, or \"10 days ago\"");
        _diluted = One("--diluted", "DAY", "When it was diluted");
        _opened = One("--opened", "DAY", "When its lot, tub or bottle was opened");
        _expires = One("--expires", "DAY", "The last day printed on its lot");
        _refilled = Flag("--refilled", "The tub or bottle was filled again");
        _tub = Flag("--tub", "It is a tub or bottle that is used up, no bath that is used again");
        _today = One("--today", "DAY", "The day it is judged on; the clock's where left out");
    }

    public override IReadOnlyList<string> ExitCodes { get; } = ["0 use it", "1 discard it, or it is not known to be good"];

    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var today = call.Options.Today(_today);
        var passed = call.Has(_passed);
        var failed = call.Has(_failed);
        if (passed && failed) call.Note("passed-and-failed", "a test has not both passed and failed", null, "failed");
        var question = new BathQuestion
        {
            Product = Known(call, _product, kb.Sites.SelectMany(site => site.Products).Select(p => p.Id), "product"),
            Claim = Known(call, _claim, kb.Data.Claims.Select(c => c.Id), "claim"),
            Today = today,
            Measured = call.Options.Strength(_measured),
            Tested = call.Options.Day(_tested, today) ?? (passed || failed ? today : null),
            TestPassed = passed ? true : failed ? false : null,
            Activated = call.Options.Day(_activated, today),
            Diluted = call.Options.Day(_diluted, today),
            Opened = call.Options.Day(_opened, today),
            Expires = call.Options.Day(_expires, today),
            Refilled = call.Has(_refilled),
            Tub = call.Has(_tub),
        };
        if (call.Problems.Count > 0) return call.Report();
        if (!Bath.TryJudge(kb, question, out var answer, out var problems)) return call.Refuse(problems);
        if (WantsJson(call)) JsonDocuments.Write(call.Stdout, json => new BathJson(json).Write(answer!));
        else new BathText(new Page(call.Stdout), NamesOf(kb)).Write(answer!);
        return answer!.Verdict == BathVerdict.Use ? ExitCode.Done : ExitCode.NotAllowed;
    }
}
