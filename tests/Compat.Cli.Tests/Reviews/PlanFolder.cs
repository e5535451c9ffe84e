namespace Compat.Cli.Tests.Reviews;

/// <summary>A plan of an invented device, written on the base folder of the scripted edits, beside a copy to edit.</summary>
internal sealed class PlanFolder : IDisposable
{
    private readonly EditFolder _data = new();

    public PlanFolder()
    {
        Plans = Path.Combine(Path.GetDirectoryName(_data.Head)!, "plans");
        Directory.CreateDirectory(Plans);
        var plan = CliRun.Of("plan", "--data", _data.Base, "--site", Site, "--device", "desk-unit", "--soil", "none", "--json");
        Assert.Equal((0, ""), (plan.Code, plan.Notes));
        File.WriteAllText(PlanFile, plan.Output);
    }

    public static string Site { get; } = Repository.File("tests", "Compat.Cli.Tests", "Reviews", "Plans", "site.yaml");

    public string Plans { get; }

    public string PlanFile => Path.Combine(Plans, "desk-unit.json");

    public EditFolder Data => _data;

    public PlanFolder With(string file, string was, string now)
    {
        _data.Replace(file, was, now);
        return this;
    }

    public CliRun Review(params string[] more) => _data.Review(["--site", Site, "--plans", Plans, .. more]);

    public void Dispose() => _data.Dispose();
}
