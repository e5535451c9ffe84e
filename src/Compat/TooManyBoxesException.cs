namespace Compat;

/// <summary>One part and agent have more than 100,000 boxes between them: the rules cut each other too finely to list.</summary>
public sealed class TooManyBoxesException : InvalidOperationException
{
    /// <summary>Makes the error for a pair that is named later.</summary>
    public TooManyBoxesException() : base("more than 100,000 boxes") { }

    /// <summary>Makes the error.</summary>
    /// <param name="message">It names the pair.</param>
    public TooManyBoxesException(string message) : base(message) { }

    /// <summary>Makes the error with its cause.</summary>
    /// <param name="message">It names the pair.</param>
    /// <param name="innerException">The cause.</param>
    public TooManyBoxesException(string message, Exception innerException) : base(message, innerException) { }
}
