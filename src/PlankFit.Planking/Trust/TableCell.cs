using System.Collections.Immutable;

namespace PlankFit.Planking.Trust;

/// <summary>What of a table's cell may be out.</summary>
public enum CellKind
{
    HalfBreadth,
    Height,

    /// <summary>The station's place along the hull, with all that it has.</summary>
    Position,
}

/// <summary>One number of the table of offsets that planks hang on.</summary>
/// <param name="Kind">Half-breadths grow outboard, heights up, positions aft.</param>
/// <param name="Station">Its index in the table.</param>
/// <param name="Lines">The table's lines that it moves: one; two where keel and chine meet in a point; every line for a position.</param>
/// <param name="OfKeel">It is the keel's, and not what frames make.</param>
public sealed record TableCell(
    CellKind Kind,
    int Station,
    ImmutableArray<string> Lines,
    bool OfKeel
)
{
    /// <summary>The line that a cell is a value of; of a position the first.</summary>
    public string Line => Lines[0];
}
