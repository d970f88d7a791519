using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Framing;

/// <summary>
/// What lies behind a plank, on its pattern in true size: centres and edges as pencil lines broken where a word stands, and each thing's name beside its
/// centre.
/// </summary>
internal static class FramingMarks
{
    /// <summary>Vertices nearer than this to a chord are left out, mm.</summary>
    private const double ThinMm = 0.01;

    private const double ClearMm = 1;

    /// <summary>A run shorter than this goes without a name: it only touches the plank, mm.</summary>
    private const double NamedMm = 15;

    private static readonly double[] Heights = [4, 3, 2.2];
    private static readonly double[] Parts = [0.5, 0.36, 0.64, 0.24, 0.76, 0.14, 0.86];

    /// <param name="shift">Added to the plank's own (s, n).</param>
    /// <param name="there">What is drawn already and must stay clear.</param>
    public static IEnumerable<Shape> Of(
        BottomPlan plan,
        Plank plank,
        Vec2 shift,
        ImmutableArray<Shape> there
    )
    {
        ImmutableArray<FramingCrossing> crossings = FramingWords.Crossings(plan, plank);
        if (crossings.IsEmpty)
        {
            yield break;
        }

        List<Vec2[]> words = [.. there.OfType<Lettering>().Select(t => Quads.Around(t, ClearMm))];
        List<Polyline> lines = [];
        foreach (FramingCrossing crossing in crossings)
        {
            foreach ((ImmutableArray<Vec2> run, Pen pen) in Runs(plank, crossing))
            {
                ImmutableArray<Vec2> moved = [.. Thinning.Open(run, ThinMm).Select(p => p + shift)];
                lines.AddRange(
                    Quads
                        .Outside(moved, words)
                        .Select(piece => new Polyline(Layers.Behind, pen, [.. piece], false))
                );
            }
        }

        foreach (Polyline line in lines)
        {
            yield return line;
        }

        Vec2[] net = [.. Thinning.Closed(plank.FlatNet, 0.2).Select(p => p + shift)];
        Polyline[] marks =
        [
            .. there.OfType<Polyline>().Where(l => l.Layer == Layers.Marks),
            .. lines,
            new(Layers.Net, Pens.Net, [.. net], true),
        ];
        foreach (FramingCrossing crossing in crossings)
        {
            if (Named(crossing, shift, words, marks) is { } name)
            {
                words.Add(Quads.Around(name, ClearMm));
                yield return name;
            }
        }
    }

    /// <summary>Centre and edges; a place with four sides goes round, so that its ends are seen, and so does a timber that begins or ends inside the plank.</summary>
    private static IEnumerable<(ImmutableArray<Vec2> Run, Pen Pen)> Runs(
        Plank plank,
        FramingCrossing c
    )
    {
        bool round =
            c.Of.LengthMm is not null || FramingAtEdge.Of(plank, c).Any(at => at.Edge is null);
        (ImmutableArray<Vec2>, Pen)[] runs = round
            ? [(c.Centre, Pens.BehindCentre), ([.. c.Cover, c.Cover[0]], Pens.BehindEdge)]
            :
            [
                (c.Centre, Pens.BehindCentre),
                (c.OneEdge, Pens.BehindEdge),
                (c.OtherEdge, Pens.BehindEdge),
            ];
        return runs.Where(r => r.Item1.Length > 1);
    }

    /// <summary>Beside its centre, or beside the edge that is on the plank; in the first place that is free, else in the first of all.</summary>
    private static Lettering? Named(
        FramingCrossing crossing,
        Vec2 shift,
        List<Vec2[]> words,
        Polyline[] marks
    )
    {
        ImmutableArray<Vec2> run = new[]
        {
            crossing.Centre,
            crossing.OneEdge,
            crossing.OtherEdge,
        }.MaxBy(r => r.IsEmpty ? 0 : r[0].ChordTo(r[^1]));
        if (run.Length < 2 || run[0].ChordTo(run[^1]) < NamedMm)
        {
            return null;
        }

        string name = FramingWords.Sided(crossing.Of);
        Lettering? crowded = null;
        foreach (double height in Heights)
        {
            foreach (double part in Parts)
            {
                foreach (int hand in new[] { 1, -1 })
                {
                    Lettering text = Beside(name, run, part, height, hand, shift);
                    Vec2[] quad = Quads.Around(text, 0.4);
                    if (
                        !words.Any(w => Quads.Overlap(w, quad))
                        && !marks.Any(m => Quads.Struck(m, quad))
                    )
                    {
                        return text;
                    }

                    crowded = text;
                }
            }
        }

        // The least of the lettering at the run's end: a crowded name is better than none.
        return crowded;
    }

    private static Lettering Beside(
        string name,
        ImmutableArray<Vec2> run,
        double part,
        double height,
        int hand,
        Vec2 shift
    )
    {
        double at = part * (run.Length - 1);
        int i = Math.Min((int)at, run.Length - 2);
        Vec2 along = (run[^1] - run[0]).Unit();

        // Read from below or from the right.
        along = along.X < -1e-9 || (Math.Abs(along.X) <= 1e-9 && along.Y < 0) ? -1 * along : along;
        Vec2 on =
            part == 0.5 && run.Length == 2
                ? 0.5 * (run[0] + run[1])
                : run[i] + ((at - i) * (run[i + 1] - run[i]));
        return new(
            Layers.Behind,
            Pen.Thin,
            on + shift + (hand * ((height / 2) + 1.6) * along.Left()),
            name,
            height,
            Anchor.MiddleCentre,
            Math.Atan2(along.Y, along.X) * 180 / Math.PI
        );
    }
}
