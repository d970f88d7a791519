namespace PlankFit.Tests.Nesting.Sheets.Guillotine;

/// <summary>Items joined to a rectangle, with the copies that are in it.</summary>
/// <param name="I">Its length, as a place of the grid; <paramref name="J"/> its width.</param>
/// <param name="Price">Of its copies.</param>
/// <param name="Bound">No whole sheet with it in a corner is worth more.</param>
internal sealed record SheetBuild(
    SheetPart Part,
    int I,
    int J,
    long Length,
    long Width,
    ushort[] Copies,
    double Value,
    double Price,
    double Bound
)
{
    /// <summary>The same for the same copies, however they are joined.</summary>
    public string Key => new([.. Copies.Select(c => (char)(c + 1))]);

    public bool FitsWith(SheetBuild other, SheetGrid grid)
    {
        for (int k = 0; k < Copies.Length; k++)
        {
            if (Copies[k] + other.Copies[k] > grid.Items[k].Most)
            {
                return false;
            }
        }

        return true;
    }
}
