namespace Compat.Tests.RandomCases;

/// <summary>Writes a question as one line.</summary>
internal static class QuestionText
{
    public static string Of(Question q) => string.Join(", ", new (string Key, object? Value)[]
    {
        ("part", q.Part),
        ("materials", q.Materials.Count == 0 ? null : string.Join(" + ", q.Materials.Select(s => string.Join(" or ", s.OneOf)))),
        ("materials-known", q.MaterialsKnown),
        ("device", q.Device),
        ("device-part", q.DevicePart),
        ("serial", q.Serial),
        ("agent", q.Agent),
        ("product", q.Product),
        ("strength", q.Strength),
        ("dilution", q.Dilution?.Scale(100).ToString("% v/v")),
        ("method", q.Method is { } method ? Words.Of(method) : null),
        ("exposure-time", q.ExposureTime is { Lower: Interval.WithoutEnd } ? "without end" : q.ExposureTime?.ToString("s")),
        ("temperature", q.Temperature?.ToString("°C")),
        ("ph", q.Ph),
        ("uses", q.Uses),
        ("acts", q.Acts.Count == 0 ? null : string.Join(" + ", q.Acts.Select(Words.Of))),
        ("touched-by", q.TouchedBy is { } contact ? Words.Of(contact) : null),
        ("patients", q.Patients.Count == 0 ? null : string.Join(" + ", q.Patients.Select(Words.Of))),
        ("occupied", q.Occupied ? "yes" : null),
        ("soil", q.Soil is null ? null : q.Soil.Count == 0 ? "none" : string.Join(" + ", q.Soil.Select(Words.Of))),
        ("level", q.Level is { } level ? Words.Of(level) : null),
        ("against", q.Against.Count == 0 ? null : string.Join(" + ", q.Against)),
        ("cloth", q.Cloth),
    }.Where(field => field.Value is not null).Select(field => $"{field.Key}: {field.Value}"));
}
