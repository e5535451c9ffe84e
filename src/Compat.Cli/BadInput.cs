using Compat.Cli.Text;
using Compat.Validation;

namespace Compat.Cli;

/// <summary>Reports what is wrong with a call.</summary>
public static class BadInput
{
    /// <summary>A problem with the call itself.</summary>
    public static Problem Of(string code, string message, string? help = null, string field = "") =>
        new(code, new ProblemPlace(RecordKind.Question, "", field), message, help);

    /// <summary>Writes all problems, each with its help line.</summary>
    /// <returns>The exit code for bad input.</returns>
    public static int Report(IEnumerable<Problem> problems, TextWriter stderr)
    {
        var page = new Page(stderr);
        foreach (var problem in problems.Distinct())
        {
            var place = problem.Place.Kind switch
            {
                RecordKind.Question when problem.Place.Field.Length > 0 => $"--{Option(problem.Place.Field)}: ",
                RecordKind.Question => "",
                _ => $"{Space.Words.Of(problem.Place.Kind)} `{problem.Place.Id}`{(problem.Place.Field.Length == 0 ? "" : " at " + problem.Place.Field)}: ",
            };
            page.Line("error: " + place + problem.Message, 0, 2);
            if (problem.Help is not null) page.Line("help: " + problem.Help, 2, 4);
        }

        return ExitCode.BadInput;
    }

    private static string Option(string field) => field == "device-part" ? "part" : field.Split('.')[0];
}
