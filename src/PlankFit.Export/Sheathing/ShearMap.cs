using PlankFit.Export.Sheets;
using PlankFit.Export.Views;
using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheathing;

/// <summary>A side's cloth laid flat, starboard as seen from outside: how far it is sheared, in grey, and where its threads lie over a hollow and would lift.</summary>
internal static class ShearMap
{
    private const double HeadMm = 18,
        GapMm = 6;

    /// <summary>Where one grey ends and the next begins, degrees, and the greys: on the darkest a figure must still be read.</summary>
    private static readonly double[] Steps = [0.5, Drape.FlatDegrees, 5, Drape.StrokedDegrees],
        Greys = [1, 0.93, 0.84, 0.74, 0.62];

    /// <summary>So many cells along.</summary>
    private const int Along = 110;

    public static SheetPage Page(BottomPlan plan, SheathedLayer layer, SheathedSide side)
    {
        LengthUnit unit = plan.Job.Units;
        var format = SheetFormat.Wall(plan.Job);
        Box inside = Frame.Inside(format).Within(8);
        // Seen from outside p grows to the left, where the bow is to the right.
        static Vec2 Seen(Vec2 p) => new(-p.X, p.Y);
        var extent = Box.Around(side.Trim.Select(Seen));
        string legend = Legend(unit),
            verdict = SheathingWords.Verdict(layer, side, unit);
        double words =
            (Lines(legend, inside) + Lines(verdict, inside)) * Letters.Bench * Letters.Leading
            + GapMm;
        var ratio = Ratio.Fitting(
            extent,
            inside.Width - 12,
            inside.Height - HeadMm - words - (4 * GapMm),
            unit
        );
        double top = inside.Top - HeadMm,
            foot = Math.Max(
                inside.Bottom + words + (2 * GapMm),
                top - (ratio.Factor * extent.Height) - (3 * GapMm)
            );
        var at = Placing.Centred(
            extent,
            new Box(inside.Left, foot, inside.Right, top),
            ratio.Factor,
            ratio.Factor
        );
        return new(
            format,
            new(
                "Cloth: how it lies",
                $"starboard{(side.Holds.Length == 2 ? ", and port its mirror image" : "")}, {SheathingWords.Of(layer)}, outer face up",
                "scale " + ratio,
                new(1, 0),
                Cautions.Cloth
            ),
            (pad, _) =>
            {
                pad.Text(
                    inside.Left,
                    inside.Top - Letters.Name,
                    Letters.Shortened(
                        $"{SheathingWords.Of(layer)}: how far it is sheared where it lies",
                        Letters.Name,
                        inside.Width,
                        true
                    ),
                    Letters.Name,
                    bold: true
                );
                double below = pad.Paragraph(
                    inside.Left,
                    foot - (1.5 * GapMm),
                    inside.Width,
                    verdict,
                    Letters.Bench,
                    true
                );
                pad.Paragraph(inside.Left, below - 1, inside.Width, legend, Letters.Bench);
                Draw(pad, layer, side, p => at[Seen(p)], unit);
            }
        )
        {
            FoundBy = [$"{SheathingWords.Of(layer)}, how it lies"],
        };
    }

    private static int Lines(string text, Box inside) =>
        Letters.Wrap(text, Letters.Bench, inside.Width, true).Count;

    private static void Draw(
        SheetCanvas pad,
        SheathedLayer layer,
        SheathedSide side,
        Func<Vec2, Vec2> at,
        LengthUnit unit
    )
    {
        Cells(pad, side, at);
        pad.Closed(side.Trim.Select(at), Pens.Net, Layers.Net);
        foreach (FlatEdge edge in side.Edges.Edges)
        {
            pad.Open(edge.Flat.Select(at), Pens.HullEdge, Layers.Hull);
        }

        (string Name, Vec2 Keel, Vec2 Chine)[] stations = [.. Stations(side)];
        foreach ((string _, Vec2 keel, Vec2 chine) in stations)
        {
            pad.Open([at(keel), at(chine)], Pens.Station, Layers.Hull);
        }

        (double low, double high) = (
            side.Edges.Edges.SelectMany(e => e.Flat).Min(p => p.X),
            side.Edges.Edges.SelectMany(e => e.Flat).Max(p => p.X)
        );
        if (layer.Spec.FirstAlong is not FirstLine.AlongKeel and not FirstLine.AlongChine)
        {
            pad.Open([at(new(low, 0)), at(new(high, 0))], Pens.BehindCentre, Layers.Hull);
        }

        foreach (double join in side.Courses.JoinsMm)
        {
            (double from, double to) = (side.Trim.Min(p => p.Y), side.Trim.Max(p => p.Y));
            Vec2[] line = side.Courses.Along
                ? [new(low, join), new(high, join)]
                : [new(join, from), new(join, to)];
            pad.Open(line.Select(at), Pens.BehindEdge, Layers.Hull);
        }

        Box box = Box.Around(side.Trim.Select(at)).Within(-GapMm);
        foreach (BayShear bay in side.Bays)
        {
            Vec2? one = Middle(stations, bay.FromStation),
                other = Middle(stations, bay.ToStation);
            if (one is not { } a || other is not { } b)
            {
                continue;
            }

            pad.TextAtFirst(
                new[] { 0.5, 0.3, 0.7 }.Select(part => new Lettering(
                    Layers.Text,
                    Pen.Thin,
                    at(a + (part * (b - a))),
                    SheathingWords.Signed(bay.Shear.Degrees),
                    Letters.Bench,
                    Anchor.MiddleCentre,
                    0,
                    true
                )),
                box
            );
        }

        StationNames.Row(
            pad,
            stations.Select(s => (s.Name, at(s.Keel).X)),
            stations.Min(s => at(s.Keel).Y) - GapMm
        );
        pad.BreakAroundLetters(Layers.Hull, Layers.Net, Layers.Marks);
    }

    private static Vec2? Middle((string Name, Vec2 Keel, Vec2 Chine)[] stations, string name) =>
        stations.FirstOrDefault(s => s.Name == name) is { Name: not null } found
            ? 0.5 * (found.Keel + found.Chine)
            : null;

    /// <summary>Cells of the flat cloth in grey by their mean shear, and strokes along threads that would lift.</summary>
    private static void Cells(SheetCanvas pad, SheathedSide side, Func<Vec2, Vec2> at)
    {
        double length = side.Trim.Max(p => p.X) - side.Trim.Min(p => p.X);
        double cell = Math.Max(length / Along, 2.1 * side.Net.MeshMm),
            least = 8 * Drape.LeastLiftMm / (Drape.LiftOverMm * Drape.LiftOverMm);
        foreach (((int x, int y), List<ClothMesh> group) in InCells(side.Net.OnGround, cell))
        {
            double shear = 0;
            foreach (ClothMesh mesh in group)
            {
                shear += Math.Abs(mesh.ShearDegrees);
            }

            double grey = Greys[Steps.Count(s => shear / group.Count >= s)];
            Vec2 low = new(x * cell, y * cell);
            if (grey < 1)
            {
                pad.Closed(
                    new Vec2[]
                    {
                        low,
                        low + new Vec2(cell, 0),
                        low + new Vec2(cell, cell),
                        low + new Vec2(0, cell),
                    }.Select(at),
                    Pens.None,
                    Layers.Frame,
                    grey
                );
            }

            // One stroke in the middle of every other cell, along the thread that lifts.
            if ((x + y) % 2 == 0)
            {
                ClothMesh middle = group[group.Count / 2];
                (double first, double second) = side.Net.ThreadCurvatures(middle.Middle);
                if (Math.Max(first, second) >= least)
                {
                    Vec2 along =
                        0.45
                        * cell
                        * (first > second ? side.Net.Weave.First : side.Net.Weave.Second);
                    pad.Line(
                        at(middle.Middle - along),
                        at(middle.Middle + along),
                        Pens.Measure,
                        Layers.Marks
                    );
                }
            }
        }
    }

    /// <summary>Meshes by the cell of the flat cloth that their middle lies in, cells in their order along the roll and then across it.</summary>
    private static IEnumerable<((int X, int Y) Cell, List<ClothMesh> Meshes)> InCells(
        IEnumerable<ClothMesh> meshes,
        double cellMm
    )
    {
        SortedDictionary<long, List<ClothMesh>> cells = [];
        foreach (ClothMesh mesh in meshes)
        {
            long x = (long)Math.Floor(mesh.Middle.X / cellMm),
                y = (long)Math.Floor(mesh.Middle.Y / cellMm),
                key = (x << 32) + y;
            if (!cells.TryGetValue(key, out List<ClothMesh>? held))
            {
                cells[key] = held = [];
            }

            held.Add(mesh);
        }

        return cells.Select(c =>
        {
            // The lower half read back as it was written, with its sign.
            int y = (int)c.Key;
            return (((int)((c.Key - y) >> 32), y), c.Value);
        });
    }

    /// <summary>Each station's line, straight from keel to chine on the flat cloth: for the eye, not to measure from.</summary>
    private static IEnumerable<(string Name, Vec2 Keel, Vec2 Chine)> Stations(SheathedSide side)
    {
        foreach (StationMarks marks in side.Marks)
        {
            if (
                On(side.Edges.Of(PanelEdge.Lower), marks.XMm) is { } keel
                && On(side.Edges.Of(PanelEdge.Upper), marks.XMm) is { } chine
            )
            {
                yield return (marks.Station, keel, chine);
            }
        }
    }

    private static Vec2? On(FlatEdge? edge, double x)
    {
        const double pastMm = 30;
        if (edge is null)
        {
            return null;
        }

        int near = Enumerable.Range(0, edge.Flat.Length).MinBy(i => Math.Abs(edge.OnHull[i].X - x));
        double off = x - edge.OnHull[near].X;
        int other = Enumerable
            .Range(0, edge.Flat.Length)
            .Where(i => Math.Abs(i - near) == 1)
            .MinBy(i => Math.Abs(edge.OnHull[i].X - x));
        double run = edge.OnHull[other].X - edge.OnHull[near].X;
        return Math.Abs(off) > pastMm && off * run < 0 ? null
            : Math.Abs(run) < 1e-9 ? edge.Flat[near]
            : edge.Flat[near]
                + (Math.Clamp(off / run, -0.5, 1) * (edge.Flat[other] - edge.Flat[near]));
    }

    private static string Legend(LengthUnit unit)
    {
        string[] steps = [.. Steps.Select(s => NumberText.Trimmed(s, 1))];
        return $"White: sheared by less than {steps[0]} degrees. Then greyer from {steps[0]}, {steps[1]}, {steps[2]} and {steps[3]} degrees on. Figures are the greatest in each bay. Thick: the edges of the bottom; dashed: where it is trimmed; chain: the first line. "
            + $"Strokes: threads that lie over a hollow and, pulled tight, would lift by {LengthText.ForPaper(Drape.LeastLiftMm, unit)} or more over {LengthText.ForPaper(Drape.LiftOverMm, unit)}. A view, not to measure from.";
    }
}
