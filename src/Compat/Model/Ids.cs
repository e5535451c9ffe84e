namespace Compat;

/// <summary>A stable name of one record: lower-case words joined by single hyphens, for example <c>keypad-membrane</c>.</summary>
/// <remarks>Ids are equal when their kind and their text are equal. They are immutable and safe to share between threads.</remarks>
public abstract record Id : IComparable<Id>
{
    /// <summary>The longest text an id may have, in characters.</summary>
    public const int MaximumLength = 100;

    private protected Id(string value)
    {
        if (!IsWellFormed(value))
            throw new ArgumentException($"`{value}` is no id: expected lower-case words joined by hyphens", nameof(value));
        Value = value;
    }

    /// <summary>The text of the id.</summary>
    public string Value { get; }

    /// <summary>Whether a text has the form of an id: 1 to <see cref="MaximumLength"/> characters, a-z, 0-9, single hyphens between words.</summary>
    public static bool IsWellFormed(string? text)
    {
        if (string.IsNullOrEmpty(text) || text!.Length > MaximumLength || text[0] == '-' || text[text.Length - 1] == '-')
            return false;
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (c is not ((>= 'a' and <= 'z') or (>= '0' and <= '9') or '-')) return false;
            if (c == '-' && text[i - 1] == '-') return false;
        }

        return true;
    }

    /// <summary>Orders ids by their text, character by character.</summary>
    public int CompareTo(Id? other) => string.CompareOrdinal(Value, other?.Value);

    /// <summary>The text of the id.</summary>
    public sealed override string ToString() => Value;
}

/// <summary>A stable name made of ids joined by dots, the first part saying where the record is kept, for example <c>display-coated.alcohol</c>.</summary>
/// <remarks>Equal when kind and text are equal. Immutable and safe to share between threads.</remarks>
public abstract record DottedId : IComparable<DottedId>
{
    /// <summary>The longest text such an id may have, in characters.</summary>
    public const int MaximumLength = 200;

    private protected DottedId(string value)
    {
        if (!IsWellFormed(value))
            throw new ArgumentException($"`{value}` is no id: expected ids joined by dots", nameof(value));
        Value = value;
    }

    /// <summary>The text of the id.</summary>
    public string Value { get; }

    /// <summary>Whether a text has the form: at most <see cref="MaximumLength"/> characters, ids joined by single dots.</summary>
    public static bool IsWellFormed(string? text) =>
        text is { Length: > 0 and <= MaximumLength } && text.Split('.').All(Id.IsWellFormed);

    /// <summary>Orders ids by their text, character by character.</summary>
    public int CompareTo(DottedId? other) => string.CompareOrdinal(Value, other?.Value);

    /// <summary>The text of the id.</summary>
    public sealed override string ToString() => Value;
}

// Constructor and TryParse of each kind of id are written by Compat.Generators.

/// <summary>Names an agent class, for example <c>isopropanol</c>.</summary>
public sealed partial record AgentId : Id;

/// <summary>Names a claim of efficacy, for example <c>glutaraldehyde.high.45-min</c>.</summary>
public sealed partial record ClaimId : DottedId;

/// <summary>Names a device of a site.</summary>
public sealed partial record DeviceId : Id;

/// <summary>Names one part of a device; unique within that device only.</summary>
public sealed partial record DevicePartId : Id;

/// <summary>Names one edition of a device's instructions; unique within that device only.</summary>
public sealed partial record EditionId : Id;

/// <summary>Names a word of instructions, for example <c>mild-detergent</c>.</summary>
public sealed partial record InstructionWordId : Id;

/// <summary>Names one claim of a product's label, unique within the product.</summary>
public sealed partial record LabelClaimId : Id;

/// <summary>Names a material, for example <c>anodised-aluminium</c>.</summary>
public sealed partial record MaterialId : Id;

/// <summary>Names a hazard of mixing, for example <c>chlorine.acid</c>.</summary>
public sealed partial record MixingHazardId : DottedId;

/// <summary>Names what a contact asks for, for example <c>broken-skin</c>.</summary>
public sealed partial record NeedRuleId : Id;

/// <summary>Names an occasion, for example <c>between-patients</c>.</summary>
public sealed partial record OccasionId : Id;

/// <summary>Names an organism, for example <c>mycobacterium-tuberculosis</c>.</summary>
public sealed partial record OrganismId : Id;

/// <summary>Names a part type, for example <c>display-coated</c>.</summary>
public sealed partial record PartId : Id;

/// <summary>Names a person rule, for example <c>phenolic.newborn</c>.</summary>
public sealed partial record PersonRuleId : DottedId;

/// <summary>Names a product of a site's shelf.</summary>
public sealed partial record ProductId : Id;

/// <summary>Names a rule, for example <c>display-coated.alcohol</c>.</summary>
public sealed partial record RuleId : DottedId;

/// <summary>Names a site: a place with a shelf of products and devices of its own.</summary>
public sealed partial record SiteId : Id;

/// <summary>Names a source, for example a guideline's table.</summary>
public sealed partial record SourceId : Id;

/// <summary>Names a standing rule: what the knowledge base must keep for ever.</summary>
public sealed partial record StandingRuleId : Id;

/// <summary>Names a record of protection.</summary>
public sealed partial record ProtectionId : Id;
