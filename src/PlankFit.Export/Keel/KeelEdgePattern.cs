using System.Collections.Immutable;
using PlankFit.Draughting.Tiling;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Keel;

/// <summary>
/// A keel layer in true size, outer face up, laid out along its own length: both edges on the outer face (to saw), on the inner face (pencil), the centre
/// line and the stations with their figures. Coordinates: along the layer's outer face from the first station, the centre line y = 0, starboard below it as it
/// lies with forward to the left.
/// </summary>
public static class KeelEdgePattern
{
    /// <summary>Vertices nearer than this to a chord are left out, mm.</summary>
    private const double ThinningMm = 0.002;

    private const double NameMm = 6;
    private const double FigureMm = 3.5;
    private const double ApartMm = 4;
    private const double MarginMm = 15;

    /// <summary>Above the pattern on a roll: room for the check squares.</summary>
    private const double BandMm = 132;

    /// <summary>For a cutting machine, in its own coordinates.</summary>
    public static Drawing Of(BottomPlan plan, KeelLayerPlan layer)
    {
        ImmutableArray<Shape> shapes = Shapes(plan, layer);
        Box box = Around(shapes);
        return new(Title(plan, layer), box.Width, box.Height, shapes);
    }

    /// <summary>For paper, moved so that all of it lies right of and above the drawing's corner.</summary>
    public static Drawing OnPaper(BottomPlan plan, KeelLayerPlan layer)
    {
        ImmutableArray<Shape> shapes = Shapes(plan, layer);
        Box box = Around(shapes).Within(-MarginMm);
        var shift = new Vec2(-box.Left, -box.Bottom);
        double band = plan.Job.Output.Patterns == PatternPages.Long ? BandMm : 0;
        return new(
            Title(plan, layer),
            box.Width,
            box.Height + band,
            [.. shapes.Select(s => Placed.By(s, shift))]
        );
    }

    private static string Title(BottomPlan plan, KeelLayerPlan layer) =>
        $"{PlanWords.Headed(plan.Job)}: keel, {layer.Spec.Name}, full size, outer face up";

    private static ImmutableArray<Shape> Shapes(BottomPlan plan, KeelLayerPlan layer)
    {
        var pad = new SheetCanvas();
        bool leans = layer.Between.Any(r => Math.Abs(r.Angles.BevelDegrees) > 0.01);
        pad.Closed(Outline(layer, r => r.HalfWidthMm), Pens.Cut, Layers.Cut);
        if (leans)
        {
            pad.Closed(Outline(layer, r => KeelWords.InnerHalfWidth(layer, r)), Pens.Inner);
        }

        double widest = layer.Between.Max(r =>
                Math.Max(r.HalfWidthMm, KeelWords.InnerHalfWidth(layer, r))
            ),
            length = layer.Between.Max(r => r.AlongMm);
        pad.Line(new(0, 0), new(length, 0), Pens.Station);
        Stations(pad, plan.Job, layer, widest, leans);
        RunOut(pad, layer);
        KeelStation[] ahead = [.. layer.On(Side.Starboard).Take(2)];
        double first = ahead.Length == 2 ? (ahead[0].AlongMm + ahead[1].AlongMm) / 2 : length / 2;
        pad.Text(new(first, 8), "port", NameMm, Anchor.MiddleCentre);
        pad.Text(new(first, -8), "starboard", NameMm, Anchor.MiddleCentre);
        pad.Text(
            new Vec2(0, -widest - (2 * ApartMm) - (2 * FigureMm) - (2 * NameMm)),
            $"{PlanWords.Headed(plan.Job, "rev")}: {layer.Spec.Name}, outer face up, forward to the left. Figures: half-width at the outer face; length along it from the first station"
                + (leans ? "; bevel off plumb, + where the outer face is the wider" : ""),
            NameMm
        );
        pad.Text(
            new Vec2(0, -widest - (2 * ApartMm) - (2 * FigureMm) - (4 * NameMm)),
            "Measure the check square both ways first, and lay a straightedge across plank and keel. Saws and planes: guards on, hands clear, eyes, ears and lungs protected. Strength is for local codes and a qualified person.",
            FigureMm
        );
        return pad.Shapes;
    }

    private static void Stations(
        SheetCanvas pad,
        Job job,
        KeelLayerPlan layer,
        double widest,
        bool leans
    )
    {
        double[] ends = [double.NegativeInfinity, double.NegativeInfinity];
        foreach (KeelStation starboard in layer.On(Side.Starboard))
        {
            KeelStation port = layer.On(Side.Port).Single(r => r.Station == starboard.Station);
            pad.Line(
                new(starboard.AlongMm, -starboard.HalfWidthMm),
                new(port.AlongMm, port.HalfWidthMm),
                Pens.Tick
            );
            string below =
                    $"{Figures(job, starboard, leans)}; {KeelWords.Length(starboard.AlongMm, job.Units)} along",
                above = Figures(job, port, leans);
            double width = Letters.Width(below, FigureMm);

            // Where stations are close their figures stand in two rows, and a third of three is left to the table.
            int row = Array.FindIndex(ends, e => starboard.AlongMm - (width / 2) > e + ApartMm);
            pad.Text(
                new(starboard.AlongMm, widest + ApartMm + FigureMm + ApartMm),
                Letters.Shortened(starboard.Station, NameMm, 60),
                NameMm,
                Anchor.BaselineCentre,
                true
            );
            if (row < 0)
            {
                continue;
            }

            ends[row] = starboard.AlongMm + (width / 2);
            double y = widest + ApartMm;
            pad.Text(
                new(starboard.AlongMm, -y - FigureMm - (row * 1.6 * FigureMm)),
                below,
                FigureMm,
                Anchor.BaselineCentre
            );
            if (row == 0)
            {
                pad.Text(new(port.AlongMm, y), above, FigureMm, Anchor.BaselineCentre);
            }
        }
    }

    private static string Figures(Job job, KeelStation row, bool leans) =>
        LengthText.PaperNumber(row.HalfWidthMm, job.Units)
        + (leans ? $", {KeelWords.Signed(row.Angles.BevelDegrees)} deg" : "");

    /// <summary>Forward of this there is no such layer on the boat: the stock may run on.</summary>
    private static void RunOut(SheetCanvas pad, KeelLayerPlan layer)
    {
        if (layer.RunsOutAtMm is not { } x)
        {
            return;
        }

        KeelStation[] run = [.. layer.Between.Where(r => r.Side == Side.Starboard)];
        int after = Array.FindIndex(run, r => r.PositionMm >= x);
        if (after <= 0)
        {
            return;
        }

        KeelStation a = run[after - 1],
            b = run[after];
        double along =
            a.AlongMm
            + ((b.AlongMm - a.AlongMm) * (x - a.PositionMm) / (b.PositionMm - a.PositionMm));
        double half = b.HalfWidthMm;
        pad.Line(new(along, -half), new(along, half), Pens.Net);
        pad.Text(
            new Vec2(along + 3, 0.3 * half),
            "planks fit the keel from here aft",
            FigureMm,
            Anchor.MiddleLeft
        );
    }

    private static ImmutableArray<Vec2> Outline(
        KeelLayerPlan layer,
        Func<KeelStation, double> halfWidth
    )
    {
        Vec2[] Edge(Side side, double sign) =>
            [
                .. layer
                    .Between.Where(r => r.Side == side)
                    .Select(r => new Vec2(r.AlongMm, sign * halfWidth(r))),
            ];
        return
        [
            .. Thinning.Open(Edge(Side.Starboard, -1), ThinningMm),
            .. Thinning.Open(Edge(Side.Port, 1), ThinningMm).Reverse(),
        ];
    }

    private static Box Around(ImmutableArray<Shape> shapes) =>
        Box.Around(shapes.SelectMany(Corners));

    private static IEnumerable<Vec2> Corners(Shape shape) =>
        shape switch
        {
            Polyline line => line.Points,
            Lettering text => Corners(text),
            _ => [],
        };

    private static IEnumerable<Vec2> Corners(Lettering text)
    {
        double width = Letters.Width(text.Text, text.HeightMm, text.Bold);
        double left = text.Anchor switch
        {
            Anchor.BaselineCentre or Anchor.MiddleCentre => -width / 2,
            Anchor.BaselineRight or Anchor.MiddleRight => -width,
            _ => 0,
        };
        yield return text.At + new Vec2(left, -text.HeightMm / 2);
        yield return text.At + new Vec2(left + width, text.HeightMm);
    }
}
