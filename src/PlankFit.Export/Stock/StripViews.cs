using System.Collections.Immutable;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Stock;

/// <summary>
/// The strips of a board, so many and so large that they can be read. A board of a few lanes has one where that can be read. Else one shows it whole with its rips,
/// and others its lanes a few at a time, larger, and where that is not enough stretch by stretch.
/// </summary>
internal static class StripViews
{
    /// <summary>So many lanes, their strip and their cuts, are room enough for a page.</summary>
    private const int MostLanes = BoardCuts.LanesTogether;

    /// <summary>No stretch is drawn larger than it is.</summary>
    private const double FullSize = 1;

    public static ImmutableArray<StripDrawing> Of(
        BottomPlan plan,
        BoardCutList list,
        double widthMm
    )
    {
        double Scale(StripView view) => StripScale.Of(view, plan.Job.Units, widthMm);
        int lanes = list.Lanes.Length,
            strips = (lanes + MostLanes - 1) / MostLanes;
        StripView whole = StripView.Whole(list),
            overview = StripView.Overview(list);
        if (
            strips == 1
            && StripDrawing.Readable(plan, whole, Scale(whole), widthMm) is { } readable
        )
        {
            return [readable];
        }

        return
        [
            StripDrawing.AtAnyRate(plan, overview, Scale(overview), widthMm),
            .. Enumerable
                .Range(0, strips)
                .SelectMany(i =>
                    Large(StripView.Ripped(list, lanes * i / strips, lanes * (i + 1) / strips))
                ),
        ];

        IEnumerable<StripDrawing> Large(StripView view)
        {
            double factor = Scale(view);
            if (StripDrawing.Readable(plan, view, factor, widthMm) is { } drawn)
            {
                return [drawn];
            }

            // Lanes that are low for their length gain by a shorter stretch, those that crowd each other by being fewer.
            ImmutableArray<StripView> shorter = view.Shorter();
            bool gains = shorter.All(v => Math.Min(Scale(v), FullSize) > factor);
            return view.LaneCount > 1 && (!gains || StripScale.IsReadable(view, factor))
                    ? view.Fewer().SelectMany(Large)
                : gains ? shorter.SelectMany(Large)
                : [StripDrawing.AtAnyRate(plan, view, factor, widthMm)];
        }
    }
}
