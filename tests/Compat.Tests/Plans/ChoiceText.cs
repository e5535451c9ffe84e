using Compat.Planning;

namespace Compat.Tests.Plans;

/// <summary>Tasks and choices as lines that can be compared and read.</summary>
internal static class ChoiceText
{
    public static string Of(ChoiceTask task) => string.Join('\n',
    [
        $"at most {task.MaxProducts} products; never in one plan {string.Join(", ", task.NeverInOnePlan)}; never on one part "
            + $"{string.Join(", ", task.NeverOnOnePart)}",
        .. task.Parts.SelectMany(
            part => part.Options.Select(
                option =>
                    $"part {part.Ordinal} option {option.Ordinal}: products "
                        + $"{string.Join(", ", option.Products.Select(used => $"{used.Product} harm {used.Harm}"))}; " +
            $"shares {string.Join(", ", option.Shares.Values)}; steps {string.Join(", ", option.Steps)}; wet {option.ContactTime}")
                .DefaultIfEmpty($"part {part.Ordinal}: none")),
    ]);

    public static string Of(Choice choice) => string.Join('\n',
        choice.Cost, "products " + string.Join(", ", choice.Products), Options(choice),
            "not served " + string.Join(", ", choice.NotServed.Select(part => part.Ordinal)));

    public static string Options(Choice choice) => string.Join(", ", choice.Served.Select(one => $"{one.Part.Ordinal}:{one.Option.Ordinal}"));
}
