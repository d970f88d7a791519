namespace PlankFit.Planking.Sheathing;

/// <summary>A shape at a height of the roll, with what it takes at most of each of the rows that a search looks at.</summary>
internal sealed class RollWay
{
    /// <param name="rows">So many heights of the roll the search looks at.</param>
    public RollWay(RollShape shape, double y, double rollMm, int rows)
    {
        (Shape, Y, RollMm) = (shape, y, rollMm);
        double row = rollMm / rows;
        First = Math.Clamp((int)(y / row), 0, rows - 1);
        int last = Math.Clamp((int)Math.Ceiling((y + shape.WidthMm) / row) - 1, First, rows - 1);
        Left = new double[last - First + 1];
        Right = new double[Left.Length];
        for (int i = 0; i < Left.Length; i++)
        {
            double low = Math.Clamp(((First + i) * row) - y, 0, shape.WidthMm),
                high = Math.Clamp(((First + i + 1) * row) - y, 0, shape.WidthMm);
            Left[i] = shape.LeftBetween(low, high);
            Right[i] = shape.RightBetween(low, high);
        }
    }

    public RollShape Shape { get; }
    public double Y { get; }
    public double RollMm { get; }
    public int First { get; }
    public double[] Left { get; }
    public double[] Right { get; }

    /// <summary>How far another's corner must lie from this one's, along the roll; null where they share no height.</summary>
    public double? Pitch(RollWay other) => Shape.Pitch(Y, other.Shape, other.Y);
}

/// <summary>A piece, by its number, that lies in one of its ways so far along the roll.</summary>
internal readonly record struct LaidWay(int Piece, RollWay Way, double X);
