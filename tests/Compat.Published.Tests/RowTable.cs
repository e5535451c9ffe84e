namespace Compat.Published.Tests;

/// <summary>A table of rows in the folder Rows: cells parted by ` | `, the source last; lines that begin with # are remarks.</summary>
internal static class RowTable
{
    public static TheoryData<string> Lines(params string[] tables)
    {
        var data = new TheoryData<string>();
        foreach (var line in tables.SelectMany(Read)) data.Add(line);
        return data;
    }

    public static string[] Cells(string line) => line.Split(" | ");

    public static IEnumerable<string> Read(string table)
    {
        using var stream = typeof(RowTable).Assembly.GetManifestResourceStream(table) ?? throw new ArgumentException("no table " + table);
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } line)
        {
            if (line.Length > 0 && line[0] != '#') yield return line;
        }
    }
}
