using System.CommandLine;
using Compat.Cli.Commands;

namespace Compat.Cli.Say;

/// <summary>Writes what <c>--help</c> shows: what a command does, its options, two worked examples.</summary>
internal static class HelpText
{
    public static void Write(Page page, Command root, Command command, Option help)
    {
        page.Line(command.Description ?? "");
        page.Heading("Usage");
        page.Line(Usage(root, command), 2, 4);
        if (command.Subcommands.Any(sub => !sub.Hidden))
        {
            page.Heading("Commands");
            foreach (var sub in command.Subcommands.Where(sub => !sub.Hidden)) page.Columns(sub.Name, sub.Description ?? "", 2, 8);
        }

        if (command.Arguments.Count > 0)
        {
            page.Heading("Arguments");
            foreach (var argument in command.Arguments) page.Columns(Label(argument), argument.Description ?? "", 2, 24);
        }

        page.Heading("Options");
        foreach (var option in command.Options.OrderBy(option => option.Name is "--data" or "--site" or "--json").Append(help).Distinct()) page.Columns(
            Label(option), option.Description ?? "", 2, 24);
        page.Heading("Exit codes");
        foreach (var code in ExitCodes(command)) page.Line(code, 2, 4);
        page.Heading("Examples");
        foreach (var example in Examples(root, command))
        {
            page.Line("# " + example.What, 2);
            foreach (var line in Wrapped(example.Line)) page.Line(line.Replace(' ', '\u00a0'), 2);
        }
    }

    private static string[] ExitCodes(Command command) => command is CliCommand cli
        ? [.. cli.ExitCodes.Append("2 bad input, or an output that cannot be written").Order(StringComparer.Ordinal)]
        : ["each command has its own: see `compat COMMAND --help`; 2 is always bad input"];

    private static IEnumerable<Example> Examples(Command root, Command command) =>
        command is CliCommand cli ? cli.Examples
        : root.Subcommands.OfType<CliCommand>().Where(sub => !sub.Hidden && sub.Examples.Count > 0).Take(2).Select(sub => sub.Examples[0]);

    /// <summary>Breaks a line before an option and marks it as a shell wants it, so that it can be pasted.</summary>
    private static IEnumerable<string> Wrapped(string line)
    {
        var current = "";
        foreach (var piece in line.Split(" --"))
        {
            if (current.Length == 0) current = piece;
            else if (current.Length + piece.Length + 3 <= Page.Width - 4) current += " --" + piece;
            else
            {
                yield return current + " \\";
                current = "  --" + piece;
            }
        }

        yield return current;
    }

    private static string Usage(Command root, Command command)
    {
        if (command == root) return "compat COMMAND [options]";
        var arguments = string.Concat(command.Arguments.Select(argument => " " + Label(argument)));
        var above = command.Parents.OfType<Command>().FirstOrDefault(parent => parent != root);
        var below = command.Subcommands.Any(sub => !sub.Hidden) ? " COMMAND" : "";
        return $"compat {(above is null ? "" : above.Name + " ")}{command.Name}{below}{arguments} [options]";
    }

    private static string Label(Argument argument) => argument.HelpName ?? argument.Name.ToUpperInvariant();

    private static string Label(Option option) =>
        option.HelpName is null ? option.Name : $"{option.Name} {option.HelpName}";
}
