using System.CommandLine;
using Compat.Cli.Json;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reviewing;

namespace Compat.Cli.Commands;

/// <summary><c>compat review</c>: says what a change of the data does to the answers.</summary>
internal sealed class ReviewCommand : CliCommand
{
    private static readonly string[] Formats = ["text", "markdown", "json"];
    private readonly Argument<string?> _base;
    private readonly Argument<string?> _head;
    private readonly Option<string?> _data;
    private readonly Option<string[]> _sites;
    private readonly Option<string?> _format;
    private readonly Option<string?> _verbose;
    private readonly Option<string?> _evidence;
    private readonly Option<string?> _who;
    private readonly Option<string?> _plans;
    private readonly Option<string?> _direct;

    public ReviewCommand()
        : base(
            "review",
            "Says which answers differ between two states of the data, over every part, agent, method and exposure, the most dangerous first, by the edit "
                + "that made each. Exit code 0: nothing loosened; 1: loosened, rules of HEAD contradict each other, its answers break a standing rule, or a "
                + "plan goes stale; 2: files that cannot be read. Revisions are compared from where HEAD left BASE.",
            new("What the working tree changes", "compat review main"),
            new("Two revisions, as a comment on a pull request", "compat review main topic --format markdown"))
    {
        _base = new Argument<string?>("base")
        {
            HelpName = "BASE",
            Description = "A data folder, or a branch, tag or commit of the repository",
            Arity = ArgumentArity.ZeroOrOne
        };
        _head = new Argument<string?>("head") { HelpName = "HEAD", Description = "The same; the working tree where left out", Arity = ArgumentArity.ZeroOrOne };
        Arguments.Add(_base);
        Arguments.Add(_head);
        _format = Format(Formats);
        _verbose = Flag("--verbose", "List every box");
        _evidence = Flag("--require-evidence", "Exit code 1 only where what is loosened rests on common practice, a recalled value or nothing; a prohibition "
            + "that is gone rests on nothing. Whether a source says the figure written under it is not looked at");
        _who = One("--who-rests-on", "ID", "What would be answered without this rule, source, claim, or the rules on this material; BASE is the state, the "
            + "working tree where left out");
        _plans = One("--plans", "DIR", "Plans and dossiers written earlier as JSON: their answers are asked of HEAD, and those that no longer hold are named "
            + "with the step and the rule, those that BASE did not give either apart");
        _data = One("--data", "DIR", "The data folder inside the repository; `data` where left out");
        _direct = Flag("--direct", "Compare with BASE as it is, with what it did since HEAD left it");
        _sites = Many("--site", "FILE", "Lay a site file over both states, each as it was then; one that was not there then as it is");
    }

    public override IReadOnlyList<string> ExitCodes { get; } =
    [
        "0 nothing loosened, or --who-rests-on",
        "1 loosened, rules of HEAD contradict each other, or a plan goes stale",
    ];

    public override int Execute(Call call)
    {
        var (first, second, who) = (call.Parsed.GetValue(_base), call.Parsed.GetValue(_head), call.Parsed.GetValue(_who));
        if (first is null && who is null) call.Note("missing-argument", "`review` needs BASE", "name a branch, tag or commit, or a data folder");
        if (second is not null && who is not null) call.Note("too-many-arguments", "`--who-rests-on` looks at one state", "leave HEAD out");
        var format = FormatOf(call, _format, Formats);
        var plans = call.Parsed.GetValue(_plans);
        if (plans is not null && who is not null) call.Note("plans-and-who", "`--plans` goes with two states", "leave `--who-rests-on` out", "plans");
        if (plans is not null && call.Parsed.GetValue(_sites) is not { Length: > 0 }) call.Note(
            "plans-without-site", "plans are of devices of a site", "name its file: `--site FILE`", "plans");
        if (call.Problems.Count > 0) return call.Report();

        var data = call.Parsed.GetValue(_data) ?? "data";
        var sites = call.Parsed.GetValue(_sites) ?? [];
        using var progress = TerminalProgress.Of(call.Stderr);
        var faults = new List<Diagnostic>();
        var (before, after) = (State(first, data, faults), State(second, data, faults));
        if (faults.Count == 0 && who is null && !call.Has(_direct))
        {
            before = before.WhereLeftBy(after, out var fault);
            if (fault is not null) faults.Add(fault);
        }

        var title = who is null ? $"{before.Heading} to {(second is null ? $"`{after.Directory}`" : after.Heading)}" : $"{before.Heading} without `{who}`";
        if (faults.Count > 0) return Unreadable(call, format, title, before.Name is not null && faults[0].File == before.ShownAs ? before : after, faults);
        var review = who is null ? FolderReview.Run(before, after, sites, plans, progress.Step) : FolderReview.Without(before, who, sites, progress.Step);
        if (review is null) return call.Refuse("unknown-id", $"no rule, source, material or claim is called `{who}`", "see `compat find`", "who-rests-on");
        if (review.UnreadableState is { } state) return Unreadable(call, format, title, state, review.Unreadable);
        var asked = who is null ? after : before;
        return Show(call, review, format, new ReviewCall(asked.Directory, who is null ? review.Sites
            : sites, title, call.Has(_verbose), review.Places!)
        { Checkout = asked.Name, Stale = review.StalePlans, Plans = review.Plans }, who is not null);
    }

    /// <summary>A folder where there is one of that name, else a revision.</summary>
    private static Revision State(string? named, string data, List<Diagnostic> faults)
    {
        var state = (named is null ? new Revision(data, null) : Directory.Exists(named) ? new Revision(named, null) : new Revision(data, named))
            .Resolved(out var fault);
        if (fault is not null) faults.Add(fault);
        return state;
    }

    /// <summary>Says what cannot be read; as a comment too, so that an older one does not stand as if it still held.</summary>
    private static int Unreadable(Call call, string format, string title, Revision state, IReadOnlyList<Diagnostic> faults)
    {
        var text = DiagnosticText.Render(faults);
        call.Stderr.Write($"`{state.ShownAs}` cannot be read:\n\n{text}");
        if (format == "markdown") call.Stdout.Write(ReviewMarkdown.Unreadable(title, state, text));
        return ExitCode.BadInput;
    }

    private int Show(Call call, FolderReview review, string format, ReviewCall shown, bool isQuestion)
    {
        var report = review.Report!;
        if (review.UnreadablePlans.Count > 0) return call.Refuse(review.UnreadablePlans);
        var names = new Names(review.Head!);
        switch (format)
        {
            case "json": JsonDocuments.Write(call.Stdout, json => new ReviewJson(json, shown, names).Write(report)); break;
            case "markdown": call.Stdout.Write(new ReviewMarkdown(shown, names).Of(report)); break;
            default: new ReviewText(call.Stdout, shown, names).Write(report); break;
        }

        if (isQuestion) return ExitCode.Done;
        var isLoosened = call.Has(_evidence) ? report.IsLoosenedOnLittle : report.IsLoosened;
        return isLoosened || report.IsBroken || review.StalePlans?.Any(plan => plan.GoesStale) == true ? ExitCode.NotAllowed : ExitCode.Done;
    }
}
