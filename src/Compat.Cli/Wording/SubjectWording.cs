namespace Compat.Cli.Wording;

/// <summary>Words what is asked about.</summary>
public static class SubjectWording
{
    /// <summary>A part with what was named of its materials and how that was taken; the materials where no part is asked.</summary>
    /// <param name="target">The part or device; null where materials alone are asked.</param>
    /// <param name="question">The question.</param>
    /// <param name="names">What things are called.</param>
    public static string Of(string? target, Question question, Names names)
    {
        var materials = string.Join(", ", question.Materials.Select(slot => string.Join(" or ", slot.OneOf.Select(id => names.Material(id.Value)))));
        var others = question.MaterialsKnown == false ? ", others not known" : "";
        if (target is null) return materials + others;
        if (materials.Length == 0) return target;
        return question.MaterialsKnown == true ? $"{target} made of {materials} and of nothing else" : $"{target} with {materials} among its materials{others}";
    }
}
