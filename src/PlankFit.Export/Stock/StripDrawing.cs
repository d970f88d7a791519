using System.Collections.Immutable;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Stock;

/// <summary>A strip as drawn with its lower left corner at the origin, and how much room its names and numbers have above it.</summary>
/// <param name="WithoutNumber">Cuts that found no place for their numbers; <paramref name="WithoutName"/> the pieces that found none.</param>
internal sealed record StripDrawing(
    StripView View,
    ImmutableArray<Shape> Shapes,
    double Factor,
    double AboveMm,
    ImmutableArray<int> WithoutNumber,
    ImmutableArray<string> WithoutName
)
{
    /// <summary>Room above a strip, the least first: where names and numbers crowd each other it has more, rather than that one stands on another.</summary>
    private static readonly double[] RoomsMm = [6.5, 11, 16, 22];

    /// <summary>So often numbers are placed anew where the strip can be drawn larger, and where it cannot.</summary>
    private const int Tries = 3;
    private const int LastTries = 12;

    /// <summary>For a strip that cannot be drawn larger: what a page has room for beside it and a few rows of its tables.</summary>
    private static readonly double[] LastRoomsMm = [30, 40];

    /// <summary>Every name and number has a place of its own.</summary>
    public bool IsComplete => WithoutNumber.IsEmpty && WithoutName.IsEmpty;

    /// <summary>The strip as low as it can be; null where that is so low, or so crowded, that it cannot be read.</summary>
    public static StripDrawing? Readable(
        BottomPlan plan,
        StripView view,
        double factor,
        double widthMm
    ) =>
        StripScale.IsReadable(view, factor)
            ? RoomsMm
                .Select(room => Of(plan, view, factor, widthMm, room, Tries))
                .FirstOrDefault(d => d.IsComplete)
            : null;

    /// <summary>The strip at any rate. What finds no place for its number or name is drawn without, and told.</summary>
    public static StripDrawing AtAnyRate(
        BottomPlan plan,
        StripView view,
        double factor,
        double widthMm
    )
    {
        StripDrawing? best = null;
        foreach (double room in RoomsMm.Concat(LastRoomsMm))
        {
            StripDrawing next = Of(plan, view, factor, widthMm, room, LastTries);
            if (best is null || next.Missing < best.Missing)
            {
                best = next;
            }

            if (best.IsComplete)
            {
                break;
            }
        }

        return best!;
    }

    private int Missing => WithoutNumber.Length + WithoutName.Length;

    private static StripDrawing Of(
        BottomPlan plan,
        StripView view,
        double factor,
        double widthMm,
        double room,
        int tries
    )
    {
        SheetCanvas pad = new();
        StripMarks marks = BoardStrip.Draw(pad, plan, view, factor, room, widthMm, tries);
        return new(
            view,
            pad.Shapes,
            factor,
            room,
            [.. marks.WithoutNumber.Order()],
            [.. marks.WithoutName]
        );
    }
}
