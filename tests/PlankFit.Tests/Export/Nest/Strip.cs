using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using PlankFit.Export.Stock;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Nest;

/// <summary>One strip of a board's drawing, told from the others by where it lies: its ground, the pieces upon it, and the letters in it or in what is left above it.</summary>
internal sealed record Strip(
    StripView View,
    Box Box,
    IReadOnlyDictionary<string, Polyline> Wood,
    Lettering[] Words,
    Polyline[] Lines
)
{
    public double Factor => Box.Width / View.LengthMm;

    public Vec2 OnBoard(Vec2 paper) =>
        new(
            ((paper.X - Box.Left) / Factor) + View.FromMm,
            ((paper.Y - Box.Bottom) / Factor) + View.LowMm
        );

    /// <summary>The names of its pieces, where they stand.</summary>
    public IEnumerable<Lettering> Names => Words.Where(w => Wood.ContainsKey(w.Text));

    /// <summary>The pieces that a name of another stands on.</summary>
    public IEnumerable<string> Under(Lettering name)
    {
        Polygon letters = BoardLaws.Shape(SheetCheck.Corners(name));
        return Wood.Where(w =>
                w.Key != name.Text && BoardLaws.Shape(w.Value.Points).Intersects(letters)
            )
            .Select(w => w.Key);
    }

    /// <summary>Those of a board's own drawing.</summary>
    public static IEnumerable<Strip> Of(BottomPlan plan, BoardCutList cuts) =>
        Of(
            CutSheets.Board(plan, plan.Nest!.Spec, cuts.Board),
            CutSheets.OnBoard(plan, plan.Nest!.Spec, cuts.Board)
        );

    private static IEnumerable<Strip> Of(Drawing sheet, ImmutableArray<StripView> views)
    {
        Polyline[] grounds =
        [
            .. sheet
                .Shapes.OfType<Polyline>()
                .Where(p => p.Layer == Layers.Hull && p.Closed && p.Fill is not null),
        ];
        Polyline[] wood =
        [
            .. sheet
                .Shapes.OfType<Polyline>()
                .Where(p => p.Layer == Layers.Cut && p.Closed && p.Fill is not null),
        ];
        Assert.Equal(views.Length, grounds.Length);
        int drawn = 0;
        foreach ((StripView view, Polyline ground) in views.Zip(grounds))
        {
            var box = new Box(
                ground.Points.Min(p => p.X) - 0.01,
                ground.Points.Min(p => p.Y) - 0.01,
                ground.Points.Max(p => p.X) + 0.01,
                ground.Points.Max(p => p.Y) + 0.01
            );
            // What is left above a strip ends at the words that head it, and beside it at the sheet's edge.
            Box above = box with
            {
                Left = box.Left - 2,
                Right = view.IsOverview ? box.Right : sheet.WidthMm,
                Top = sheet
                    .Shapes.OfType<Lettering>()
                    .Where(l => l.HeightMm == Letters.Bench && !l.Bold && l.At.Y > box.Top)
                    .Min(l => l.At.Y - 1),
            };
            string[] ids = [.. view.Pieces.Select(p => p.Piece.Id.ToString())];
            yield return new(
                view,
                box,
                ids.Zip(wood.Skip(drawn)).ToDictionary(p => p.First, p => p.Second),
                [.. sheet.Shapes.OfType<Lettering>().Where(l => above.Holds(l.At))],
                [.. sheet.Shapes.OfType<Polyline>().Where(l => above.Holds(l.Points[0]))]
            );
            drawn += ids.Length;
        }

        Assert.Equal(drawn, wood.Length);
    }

    /// <summary>From a place on the board to a cut, mm.</summary>
    public static double Off(SawCut cut, Vec2 at)
    {
        IReadOnlyList<Vec2> line = cut.ToTheLine ? cut.Line : [cut.From, cut.To];
        return Enumerable
            .Range(1, line.Count - 1)
            .Min(i =>
            {
                Vec2 side = line[i] - line[i - 1];
                double t = Math.Clamp((at - line[i - 1]).Dot(side) / side.Dot(side), 0, 1);
                return at.ChordTo(line[i - 1] + (t * side));
            });
    }
}
