using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>The planks of a view with their numbers: inside each where it has room, on a leader where it has not.</summary>
/// <param name="LeastMm">Height of capitals below which a number goes on a leader.</param>
/// <param name="MostMm">The greatest height of a number.</param>
internal sealed record PlankNumbers(double LeastMm, double MostMm)
{
    private const double LeaderMm = 6;
    private const double FarthestMm = 60;
    private const double MasterGrey = 0.85;

    /// <summary>What stands in a plank: its number.</summary>
    public Func<Plank, string> Label { get; init; } = p => NumberText.Trimmed(p.Number, 0);

    /// <summary>A plank's fill, from 0 (black) to 1 (white); the master's alone where a view says nothing.</summary>
    public Func<Plank, double?> Grey { get; init; } =
        p => p.Kind == PlankKind.Master ? MasterGrey : null;

    /// <summary>For a view that is looked at on paper.</summary>
    public static readonly PlankNumbers Usual = new(Letters.Small, 3.2);

    /// <summary>For a view that hangs in the shop.</summary>
    public static readonly PlankNumbers Large = new(Letters.Bench, 4.5);

    /// <summary>Draws outlines already on the sheet and letters them; the master plank is greyed, so that the eye finds where to start.</summary>
    /// <param name="clear">Where no leader may go.</param>
    public void Draw(
        Pad pad,
        IReadOnlyList<(Plank Plank, IReadOnlyList<Vec2> Paper)> planks,
        Box clear = default
    )
    {
        foreach ((Plank plank, IReadOnlyList<Vec2> paper) in planks)
        {
            pad.Closed(Thinning.Closed(paper, 0.02), Pens.Seam, Layers.Hull, Grey(plank));
        }

        List<(string Number, Vec2 At)> small = [];
        foreach ((Plank plank, IReadOnlyList<Vec2> paper) in planks)
        {
            string number = Label(plank);
            Vec2 at = Interior.DeepestPoint(paper, out double room);
            double height = Math.Min(MostMm, Fitting(number, room));
            if (height >= LeastMm)
            {
                bool master = plank.Kind == PlankKind.Master;
                pad.Text(at, number, height, Anchor.MiddleCentre, bold: master);
            }
            else
            {
                small.Add((number, at));
            }
        }

        foreach ((string number, Vec2 at) in small)
        {
            Lead(pad, number, at, [.. planks.Select(p => p.Paper)], clear);
        }
    }

    /// <summary>The height of lettering that keeps a number inside a circle of this radius, mm.</summary>
    private static double Fitting(string number, double room)
    {
        double width = Letters.Width(number, 1, bold: true);
        return 0.78 * room * 2 / Math.Sqrt(1 + (width * width));
    }

    /// <summary>On a leader, to the nearest place clear of all planks and of what is lettered already.</summary>
    private static void Lead(
        Pad pad,
        string number,
        Vec2 at,
        IReadOnlyList<IReadOnlyList<Vec2>> planks,
        Box clear
    )
    {
        double half = (Letters.Width(number, Letters.Bench) / 2) + 1;
        for (double reach = LeaderMm; reach < FarthestMm; reach += 2)
        {
            for (int k = 0; k < 16; k++)
            {
                (double sin, double cos) = Math.SinCos(k * Math.PI / 8);
                Vec2 end = at + (reach * new Vec2(cos, sin));
                var box = new Box(
                    end.X - half,
                    end.Y - Letters.Bench,
                    end.X + half,
                    end.Y + Letters.Bench
                );
                Vec2 stop = Segments.Clip(at, end, box) is { } inside ? inside.From : end;
                if (
                    box.Overlaps(clear)
                    || planks.Any(p => Touches(p, box))
                    || pad.Letterings.Any(l => Segments.Around(l).Overlaps(box))
                    || pad.Letterings.Any(l =>
                        Segments.Clip(at, stop, Segments.Around(l)) is not null
                    )
                )
                {
                    continue;
                }

                pad.Line(at, stop, Pens.Measure);
                pad.Dot(at, 0.4);
                pad.Text(end, number, Letters.Bench, Anchor.MiddleCentre);
                return;
            }
        }

        // No clear place within reach: small in its plank, rather than nowhere.
        pad.Text(at, number, Letters.Small, Anchor.MiddleCentre);
    }

    private static bool Touches(IReadOnlyList<Vec2> polygon, Box box)
    {
        for (int i = 0; i < polygon.Count; i++)
        {
            if (Segments.Clip(polygon[i], polygon[(i + 1) % polygon.Count], box) is not null)
            {
                return true;
            }
        }

        return Segments.Inside(polygon, box.Middle);
    }
}
