namespace Compat.Snapshots;

/// <summary>A snapshot file is damaged, of another format version, or none at all.</summary>
public sealed class SnapshotException : IOException
{
    /// <summary>Makes the error.</summary>
    public SnapshotException() : this("it cannot be read") { }

    /// <summary>Makes the error.</summary>
    /// <param name="message">What is wrong with the file.</param>
    public SnapshotException(string message) : base("the snapshot is damaged or of another kind: " + message) { }

    /// <summary>Makes the error with its cause.</summary>
    /// <param name="message">What is wrong with the file.</param>
    /// <param name="innerException">The cause.</param>
    public SnapshotException(string message, Exception innerException) : base("the snapshot is damaged or of another kind: " + message, innerException) { }
}
