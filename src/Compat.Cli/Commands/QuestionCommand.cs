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
    protected Option<string[]> Materials() => Many("--material", "ID", "A material, alone or one that the part has beside what its kind has; `a|b` where it is one of several");

    /// <summary>The option that says whether the materials are all.</summary>
    protected Option<string?> MaterialsKnown() => One("--materials-known", "WORD", "fully where the materials named are all that the part has, in place of what its kind has; partly where it has others too");

    /// <summary>The option that names the agent.</summary>
    protected Option<string?> Agent() => One("--agent", "ID", "The agent class");
}
