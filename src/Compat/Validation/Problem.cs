namespace Compat.Validation;

/// <summary>The kinds of record a problem can lie in.</summary>
public enum RecordKind
{
    /// <summary>A material.</summary>
    Material,

    /// <summary>A part type.</summary>
    Part,

    /// <summary>An agent class.</summary>
    Agent,

    /// <summary>A rule.</summary>
    Rule,

    /// <summary>A source.</summary>
    Source,

    /// <summary>A convention.</summary>
    Convention,

    /// <summary>A standing rule.</summary>
    StandingRule,

    /// <summary>A product.</summary>
    Product,

    /// <summary>A device.</summary>
    Device,

    /// <summary>A site as a whole.</summary>
    Site,

    /// <summary>A question.</summary>
    Question,

    /// <summary>An organism.</summary>
    Organism,

    /// <summary>What a level includes.</summary>
    Level,

    /// <summary>What a contact asks.</summary>
    Need,

    /// <summary>A claim of efficacy.</summary>
    Claim,

    /// <summary>A hazard of mixing.</summary>
    Mixing,

    /// <summary>A person rule.</summary>
    PersonRule,

    /// <summary>Protection of staff.</summary>
    Protection,

    /// <summary>A word of instructions.</summary>
    InstructionWord,

    /// <summary>An occasion.</summary>
    Occasion,

    /// <summary>What is on record as harmless where two meet.</summary>
    HarmlessMeeting,

    /// <summary>A test that claims of labels rest on.</summary>
    TestStandard,
}

/// <summary>Where a problem lies.</summary>
/// <param name="Kind">The kind of record.</param>
/// <param name="Id">The record's id; empty where it has none.</param>
/// <param name="Field">The field inside the record as a file spells it, nested by dots, list items by index: <c>when.strength</c>, <c>seen-with.0</c>; empty
/// for the whole record.</param>
/// <param name="Occurrence">Which record of that id, counted from 0, where an id is given twice.</param>
public sealed record ProblemPlace(RecordKind Kind, string Id, string Field = "", int Occurrence = 0);

/// <summary>One thing that is wrong with data or a question.</summary>
/// <param name="Code">A stable name of the kind of problem, in kebab-case.</param>
/// <param name="Place">Where it lies.</param>
/// <param name="Message">What is wrong, in the reader's words: lower case, no final stop, the offending text in backticks.</param>
/// <param name="Help">What to do, or the nearest known names; null where there is nothing to add.</param>
public sealed record Problem(string Code, ProblemPlace Place, string Message, string? Help = null)
{
    /// <summary>The other record it speaks of, for example the first of two that have one id; null where there is none.</summary>
    public ProblemPlace? Other { get; init; }

    /// <summary>The place and the message in one line.</summary>
    public override string ToString() =>
        $"{Space.Words.Of(Place.Kind)} `{Place.Id}`{(Place.Field.Length == 0 ? "" : " at " + Place.Field)}: {Message}{(Help is null ? "" : " (" + Help + ")")}";
}
