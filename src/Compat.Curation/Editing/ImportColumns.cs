namespace Compat.Curation.Editing;

/// <summary>The names of the columns of a site's asset list.</summary>
/// <param name="Device">The column that says what kind of device it is.</param>
/// <param name="Model">The column that names the model; null where there is none.</param>
public sealed record ImportColumns(string Device, string? Model);
