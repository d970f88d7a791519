using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>A strip as drawn with its lower left corner at the origin, and how much room its names and numbers have above it.</summary>
internal sealed record StripDrawing(ImmutableArray<Shape> Shapes, double Factor, double AboveMm)
{
    /// <summary>
    /// Room above a strip, the least first: where names and numbers crowd each other it has more, rather than that one stands on another. The last is what a page
    /// has room for beside a strip and a few rows of its tables.
    /// </summary>
    private static readonly double[] RoomsMm = [6.5, 11, 16, 22, 30, 40];

    public static StripDrawing Of(BottomPlan plan, StripView view, double factor)
    {
        foreach (double room in RoomsMm)
        {
            Pad pad = new();
            if (BoardStrip.Draw(pad, plan, view, factor, room) || room == RoomsMm[^1])
            {
                return new(pad.Shapes, factor, room);
            }
        }

        throw new InvalidOperationException("a strip is drawn in the last room at any rate");
    }
}
