using System.Diagnostics;

namespace Compat.Cli.Tests.Cards;

/// <summary>A test that needs a browser: skipped by name where none is installed; `.ci/run` fails with CI=true where one could be.</summary>
public sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = Browser.WhyNot;
}

/// <summary>A test with cases that needs a browser: skipped by name where none is installed; `.ci/run` fails with CI=true where one could be.</summary>
public sealed class BrowserTheoryAttribute : TheoryAttribute
{
    public BrowserTheoryAttribute() => Skip = Browser.WhyNot;
}

/// <summary>Headless Chromium and the program that reads the text of a PDF.</summary>
internal static class Browser
{
    private static readonly string? Chromium = Found("chromium") ?? Found("chromium-browser") ?? Found("google-chrome");
    private static readonly string? PdfToText = Found("pdftotext");

    /// <summary>Why a test with a browser is skipped; null where it runs.</summary>
    public static string? WhyNot =>
        Chromium is not null && PdfToText is not null ? null : "needs chromium and pdftotext (Debian: chromium, poppler-utils)";

    /// <summary>Prints a page as PDF.</summary>
    public static byte[] Pdf(string html) => In(html, (folder, page) =>
    {
        var pdf = Path.Combine(folder, "page.pdf");
        Run(Chromium, "chromium", ["--no-pdf-header-footer", $"--print-to-pdf={pdf}", page], folder);
        return File.ReadAllBytes(pdf);
    });

    /// <summary>The text of a PDF, every space one space.</summary>
    public static string TextOf(byte[] pdf) => In("", (folder, page) =>
    {
        var file = Path.Combine(folder, "page.pdf");
        File.WriteAllBytes(file, pdf);
        var info = new ProcessStartInfo(PdfToText ?? "pdftotext", [file, "-"])
        {
            RedirectStandardOutput = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
        };
        using var process = Process.Start(info)!;
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    });

    /// <summary>The page as it stands once its scripts have run.</summary>
    public static string Dom(string html) => In(html, (folder, page) => Run(Chromium, "chromium", ["--dump-dom", page], folder));

    private static string Run(string? program, string name, string[] arguments, string folder)
    {
        string[] quiet = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
            "--disable-component-update", "--disable-sync", $"--user-data-dir={Path.Combine(folder, "profile")}"];
        var info = new ProcessStartInfo(program ?? name, [.. quiet, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
        };
        using var process = Process.Start(info)!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        var output = process.StandardOutput.ReadToEnd();
        if (!process.WaitForExit(60_000)) process.Kill(entireProcessTree: true);
        return output;
    }

    private static T In<T>(string html, Func<string, string, T> act)
    {
        var folder = Directory.CreateTempSubdirectory("compat-card").FullName;
        try
        {
            var page = Path.Combine(folder, "page.html");
            File.WriteAllText(page, html);
            return act(folder, new Uri(page).AbsoluteUri);
        }
        finally
        {
            try
            {
                Directory.Delete(folder, recursive: true);
            }
            catch (IOException)
            {
                // A child of the browser may still be writing its profile; the folder is a temporary one.
            }
        }
    }

    private static string? Found(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(folder => Path.Combine(folder, program))
            .FirstOrDefault(File.Exists);
}
