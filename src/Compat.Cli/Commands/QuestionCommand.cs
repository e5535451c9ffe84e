using System.CommandLine;

namespace Compat.Cli.Commands;

/// <summary>A command that is asked about a part or materials, and an agent.</summary>
internal abstract class QuestionCommand : DataCommand
{
    /// <summary>Makes the command.</summary>
    protected QuestionCommand(string name, string description, params Example[] examples)
        : base(name, description, examples)
    {
    }

    /// <summary>The option that names the part.</summary>
    protected Option<string?> Part(string description) => One("--part", "ID", description);

    /// <summary>The option that names materials.</summary>
    protected Option<string[]> Materials() => Many("--material", "ID", "A material, alone or in place of the part's own; `a|b` where it is one of several");

    /// <summary>The option that names the agent.</summary>
    protected Option<string?> Agent() => One("--agent", "ID", "The agent class");
}
