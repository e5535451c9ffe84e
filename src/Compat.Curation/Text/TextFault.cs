namespace Compat.Curation.Text;

/// <summary>What is wrong with a text: one message and, perhaps, what to do.</summary>
internal sealed record TextFault(string Message, string? Help = null)
{
    /// <summary>Both in one line.</summary>
    public override string ToString() => Help is null ? Message : Message + "; " + Help;
}
