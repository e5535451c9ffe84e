namespace Compat.Tests.RandomCases;

/// <summary>Writes a question as one line.</summary>
internal static class QuestionText
{
    public static string Of(Question q) => string.Join(", ", new (string Key, object? Value)[]
    {
        ("part", q.Part),
        ("materials", q.Materials.Count == 0 ? null : string.Join(" + ", q.Materials.Select(s => string.Join(" or ", s.OneOf)))),
        ("device", q.Device),
        ("device-part", q.DevicePart),
        ("serial", q.Serial),
        ("agent", q.Agent),
        ("product", q.Product),
        ("strength", q.Strength),
        ("dilution", q.Dilution?.Scale(100).ToString("% v/v")),
        ("method", q.Method is { } method ? Words.Of(method) : null),
        ("residence", q.Residence is { Lower: Interval.WithoutEnd } ? "without end" : q.Residence?.ToString("s")),
        ("temperature", q.Temperature?.ToString("°C")),
        ("ph", q.Ph),
        ("uses", q.Uses),
        ("acts", q.Acts.Count == 0 ? null : string.Join(" + ", q.Acts.Select(Words.Of))),
    }.Where(field => field.Value is not null).Select(field => $"{field.Key}: {field.Value}"));
}
