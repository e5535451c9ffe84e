namespace Compat.Model;

/// <summary>
/// Marks a field of a record that changes no answer: a name, a reason, a date of review, where a statement comes from. A field without the mark decides.
/// </summary>
/// <remarks>A review takes an edit of remarks alone for wording. So a field that is added later is taken to decide until it is marked.</remarks>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class RemarkAttribute : Attribute;
