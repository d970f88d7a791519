using System.Collections.Immutable;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Framing;

/// <summary>What lies behind as tables: its crossings with every plank, and its lines by tape.</summary>
public static class FramingTables
{
    /// <summary>One row a plank and thing: where its centre meets the plank's edges, along each edge from its inboard end (an end: from its forward corner).</summary>
    public static Table Crossings(BottomPlan plan) =>
        TableOf.Build("what lies behind", CrossingColumns, Rows(plan));

    /// <summary>One row a thing and station of every face that planks are laid on after the first skin, then the things across the hull.</summary>
    public static Table Snaps(BottomPlan plan, FramingPlan behind) =>
        TableOf.Build(
            "lines to snap",
            SnapColumns,
            behind.Snaps.SelectMany(f => SnapRow.Of(plan, f))
        );

    private sealed record CrossingRow(
        Plank Plank,
        FramingCrossing Crossing,
        FramingAtEdge? First,
        FramingAtEdge? Last,
        LengthUnit Unit
    );

    private static IEnumerable<CrossingRow> Rows(BottomPlan plan) =>
        from layer in plan.PlankLayers
        from side in new[] { Side.Starboard, Side.Port }
        from plank in layer.On(side)
        from crossing in FramingWords.Crossings(plan, plank)
        let met = FramingAtEdge.Of(plank, crossing)
        select new CrossingRow(
            plank,
            crossing,
            met.IsEmpty ? null : met[0],
            met.IsEmpty ? null : met[1],
            plan.Job.Units
        );

    private static readonly ImmutableArray<ColumnOf<CrossingRow>> CrossingColumns =
    [
        new("plank", 9, r => r.Plank.Id.ToString()),
        new("side", 11, r => PlankWords.Of(r.Plank.Side)),
        new("layer", 7, r => r.Plank.Layer),
        new("behind", 22, r => r.Crossing.Of.Name),
        new("kind", 11, r => FramingWords.Of(r.Crossing.Of.Kind)),
        new("first edge", 14, r => Edge(r.First)),
        new("at", 12, r => OnPaper(r.First, r.Unit)),
        new("second edge", 14, r => Edge(r.Last)),
        new("at (second)", 12, r => OnPaper(r.Last, r.Unit)),
        new("at mm", 11, r => Mm(r.First), 2),
        new("at (second) mm", 11, r => Mm(r.Last), 2),
        new("width mm", 11, r => r.Crossing.Of.WidthMm, 2),
        new("covers mm2", 11, r => FlatPolygon.Area(r.Crossing.Cover), 0),
    ];

    private static string Edge(FramingAtEdge? at) =>
        at is null ? "its edge only" : at.Edge ?? "ends inside";

    private static TableCell OnPaper(FramingAtEdge? at, LengthUnit unit) =>
        at?.Edge is null ? TableCell.Empty : LengthText.ForPaper(at.Mm, unit);

    private static TableCell Mm(FramingAtEdge? at) => at?.Edge is null ? TableCell.Empty : at.Mm;

    private static readonly ImmutableArray<ColumnOf<SnapRow>> SnapColumns =
    [
        new("before laying layer", 10, r => r.Layer),
        new("sides", 11, r => r.Sides),
        new("line", 22, r => r.Thing.Name),
        new("kind", 11, r => FramingWords.Of(r.Thing.Kind)),
        new("width", 11, r => LengthText.ForPaper(r.Thing.WidthMm, r.Unit)),
        new("where", 26, r => new TableCell(r.At.Where, null) { AtMm = r.At.XMm }),
        new("from keel's side", 14, r => Paper(r.At.FromKeelMm, r.Unit)),
        new("from chine", 14, r => Paper(r.At.FromChineMm, r.Unit)),
        new("what", 26, r => r.Note),
        new("from keel's side mm", 11, r => r.At.FromKeelMm, 2),
        new("from chine mm", 11, r => r.At.FromChineMm, 2),
        new("x mm", 11, r => r.At.XMm, 2),
    ];

    private static TableCell Paper(double? mm, LengthUnit unit) =>
        mm is { } m ? LengthText.ForPaper(m, unit) : TableCell.Empty;
}
