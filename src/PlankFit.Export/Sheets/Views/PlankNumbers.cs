using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>The planks of a view with their numbers: inside each where it has room, on a leader where it has not.</summary>
internal static class PlankNumbers
{
    private const double LeastMm = 1.8;
    private const double MostMm = 3.2;
    private const double LeaderMm = 6;
    private const double MasterGrey = 0.85;

    /// <summary>Draws outlines already on the sheet and letters them; the master plank is greyed, so that the eye finds where to start.</summary>
    public static void Draw(Pad pad, IReadOnlyList<(Plank Plank, IReadOnlyList<Vec2> Paper)> planks)
    {
        foreach ((Plank plank, IReadOnlyList<Vec2> paper) in planks)
        {
            IReadOnlyList<Vec2> thin = Thinning.Closed(paper, 0.02);
            pad.Closed(
                thin,
                Pens.Seam,
                Layers.Hull,
                plank.Kind == PlankKind.Master ? MasterGrey : null
            );
        }

        var taken = new List<Box>();
        foreach ((Plank plank, IReadOnlyList<Vec2> paper) in planks)
        {
            string number = NumberText.Trimmed(plank.Number, 0);
            Vec2 at = Interior.DeepestPoint(paper, out double room);
            double height = Math.Min(MostMm, Fitting(number, room));
            if (height >= LeastMm)
            {
                pad.Text(
                    at,
                    number,
                    height,
                    Anchor.MiddleCentre,
                    bold: plank.Kind == PlankKind.Master
                );
                continue;
            }

            Lead(pad, number, at, planks, taken);
        }
    }

    /// <summary>The height of lettering that keeps a number inside a circle of this radius, mm.</summary>
    private static double Fitting(string number, double room)
    {
        double width = Letters.Width(number, 1, bold: true);
        return 0.78 * room * 2 / Math.Sqrt(1 + (width * width));
    }

    /// <summary>On a leader, to the nearest place clear of all planks and of other leaders' numbers.</summary>
    private static void Lead(
        Pad pad,
        string number,
        Vec2 at,
        IReadOnlyList<(Plank Plank, IReadOnlyList<Vec2> Paper)> planks,
        List<Box> taken
    )
    {
        double width = Letters.Width(number, Letters.Bench);
        for (double reach = LeaderMm; reach < 60; reach += 2)
        {
            for (int k = 0; k < 16; k++)
            {
                double angle = k * Math.PI / 8;
                var direction = new Vec2(Math.Cos(angle), Math.Sin(angle));
                Vec2 end = at + (reach * direction);
                var box = new Box(
                    end.X - (width / 2) - 1,
                    end.Y - Letters.Bench,
                    end.X + (width / 2) + 1,
                    end.Y + Letters.Bench
                );
                if (taken.Any(box.Overlaps) || planks.Any(p => Touches(p.Paper, box)))
                {
                    continue;
                }

                taken.Add(box);
                pad.Line(at, end - (2.2 * direction), Pens.Measure);
                pad.Dot(at, 0.4);
                pad.Text(end, number, Letters.Bench, Anchor.MiddleCentre);
                return;
            }
        }
    }

    private static bool Touches(IReadOnlyList<Vec2> polygon, Box box) =>
        polygon.Any(box.Holds)
        || Segments.Inside(polygon, box.Middle)
        || Segments.Inside(polygon, new(box.Left, box.Bottom))
        || Segments.Inside(polygon, new(box.Right, box.Top));
}
