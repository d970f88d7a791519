namespace PlankFit.Planking.Joints;

/// <summary>A key of all that matters when a plank is to be given its joints: which, and what those after it leave to it and to those before it.</summary>
internal sealed class RowState : IEquatable<RowState>
{
    private readonly ulong[] words;
    private readonly int hash;

    public RowState(ulong[] words)
    {
        this.words = words;
        var code = new HashCode();
        foreach (ulong word in words)
        {
            code.Add(word);
        }

        hash = code.ToHashCode();
    }

    public bool Equals(RowState? other) =>
        other is not null && words.AsSpan().SequenceEqual(other.words);

    public override bool Equals(object? obj) => Equals(obj as RowState);

    public override int GetHashCode() => hash;
}
