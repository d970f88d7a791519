using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>The planks of a view with their numbers: inside each where it has room, on a leader where it has not.</summary>
internal static class PlankNumbers
{
    private const double LeastMm = 1.8;
    private const double MostMm = 3.2;
    private const double LeaderMm = 7;

    /// <summary>Draws outlines already on the sheet and letters them.</summary>
    /// <param name="away">The middle of the whole view: leaders lead away from it.</param>
    /// <param name="mastersFill">The master plank is greyed, so that the eye finds where to start.</param>
    public static void Draw(
        Pad pad,
        IReadOnlyList<(Plank Plank, IReadOnlyList<Vec2> Paper)> planks,
        Vec2 away,
        double? mastersFill = 0.85
    )
    {
        foreach ((Plank plank, IReadOnlyList<Vec2> paper) in planks)
        {
            IReadOnlyList<Vec2> thin = Thinning.Closed(paper, 0.02);
            pad.Closed(
                thin,
                Pens.Seam,
                Layers.Hull,
                plank.Kind == PlankKind.Master ? mastersFill : null
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

            Lead(
                pad,
                number,
                at,
                (at - away).Norm > 1e-6 ? (at - away).Unit() : new Vec2(0, 1),
                taken
            );
        }
    }

    /// <summary>The height of lettering that keeps a number inside a circle of this radius, mm.</summary>
    private static double Fitting(string number, double room)
    {
        double width = Letters.Width(number, 1, bold: true);
        return 0.92 * room * 2 / Math.Sqrt(1 + (width * width));
    }

    private static void Lead(Pad pad, string number, Vec2 at, Vec2 direction, List<Box> taken)
    {
        double width = Letters.Width(number, Letters.Bench),
            reach = LeaderMm;
        for (int i = 0; i < 12; i++, reach += 3)
        {
            Vec2 end = at + (reach * direction);
            var box = new Box(
                end.X - (width / 2) - 0.5,
                end.Y - Letters.Bench,
                end.X + (width / 2) + 0.5,
                end.Y + Letters.Bench
            );
            if (taken.Any(box.Overlaps))
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
