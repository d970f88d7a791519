using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;

namespace PlankFit.Export.Stock;

/// <summary>The numbers of cuts.</summary>
internal sealed partial class StripMarks
{
    private const double RingMm = 2;
    private static readonly double[] Along = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];
    private static readonly double[] Everywhere =
    [
        .. Enumerable.Range(1, 19).Select(i => i / 20.0),
    ];

    /// <summary>Cuts whose numbers found no place: they are drawn without.</summary>
    public List<int> WithoutNumber { get; } = [];

    /// <summary>The cuts' numbers in rings: on their lines, or beside them with a thin line to the cut. Lines stop at the rings.</summary>
    /// <param name="tries">So often they are placed anew where one finds no place.</param>
    public void Numbers(ImmutableArray<SawCut> all, int tries)
    {
        List<(SawCut Cut, StripRing Ring)> rings = Placed(all, tries);
        Vec2[][] shapes =
        [
            .. rings.Select(r => (Vec2[])[.. Circles.Polygon(r.Ring.At, r.Ring.RadiusMm, 0.02)]),
            .. gaps,
        ];
        foreach (List<Vec2> part in edges.SelectMany(e => Quads.Outside(e, shapes)))
        {
            pad.Open(part, Pens.Outer, Layers.Hull);
        }

        foreach (List<Vec2> part in left.SelectMany(e => Quads.Outside(e, shapes)))
        {
            pad.Open(part, Pens.Net, Layers.Net);
        }

        foreach (SawCut cut in all.Where(c => cuts.ContainsKey(c.Number)))
        {
            Pen pen = cut.Kind == CutKind.Parting ? Pens.Inner : Pens.Cut;
            foreach (List<Vec2> part in Quads.Outside(cuts[cut.Number], shapes))
            {
                pad.Open(part, pen, Layers.Cut);
            }
        }

        foreach (List<Vec2> part in elsewhere.SelectMany(e => Quads.Outside(e, shapes)))
        {
            pad.Open(part, Pens.Cut, Layers.Cut);
        }

        foreach ((SawCut cut, StripRing ring) in rings)
        {
            if (ring.Foot is { } foot)
            {
                pad.Line(ring.Edge, foot, Pens.Measure);
                pad.Dot(foot, 0.45);
            }

            pad.Add([new CircleShape(Layers.Marks, Pens.Outer, ring.At, ring.RadiusMm, 1)]);
            pad.Text(ring.At, Number(cut), Letters.Small, Anchor.MiddleCentre, true);
        }
    }

    /// <summary>The shortest lines first: they have the fewest places. Where one finds none it goes before all others, and they are placed again; what finds none at the last goes without.</summary>
    private List<(SawCut Cut, StripRing Ring)> Placed(ImmutableArray<SawCut> all, int tries)
    {
        List<SawCut> order =
        [
            .. all.Where(c => cuts.ContainsKey(c.Number))
                .OrderBy(c => cuts[c.Number][0].ChordTo(cuts[c.Number][^1])),
        ];
        for (int time = 1; ; time++)
        {
            int keptBefore = kept.Count,
                hardBefore = hard.Count;
            var rings = new List<(SawCut Cut, StripRing Ring)>();
            SawCut? without = null;
            foreach (SawCut cut in order)
            {
                if (Place(cut) is not { } ring)
                {
                    without ??= cut;
                    if (time < tries)
                    {
                        break;
                    }

                    continue;
                }

                rings.Add((cut, ring));
                kept.Add(Around(ring.At, ring.RadiusMm));
                if (ring.Foot is { } foot)
                {
                    hard.Add((ring.Edge, foot));
                }
            }

            if (without is null || time == tries)
            {
                WithoutNumber.AddRange(all.Except(rings.Select(r => r.Cut)).Select(c => c.Number));
                return rings;
            }

            kept.RemoveRange(keptBefore, kept.Count - keptBefore);
            hard.RemoveRange(hardBefore, hard.Count - hardBefore);
            order.Remove(without);
            order.Insert(0, without);
        }
    }

    private static string Number(SawCut cut) => cut.Number.ToString(CultureInfo.InvariantCulture);

    private StripRing? Place(SawCut cut)
    {
        ImmutableArray<Vec2> line = cuts[cut.Number];
        double radius = Math.Max(
            RingMm,
            (Letters.Width(Number(cut), Letters.Small, true) / 2) + 0.6
        );
        // A ring on a shorter line would hide it, and its neighbours with it.
        if (line[0].ChordTo(line[^1]) > 2.5 * radius && OnLine(line, radius) is { } on)
        {
            return new(on, radius, null);
        }

        // The nearest free place to any part of the line; where all is taken, one that other lines cross.
        foreach (bool clear in new[] { true, false })
        {
            StripRing? found = StripPlaces
                .Beside(line[0], line[^1], radius, clear ? Along : Everywhere, FurthestMm)
                .FirstOrDefault(r => Holds(r, clear));
            if (found is not null)
            {
                return found;
            }
        }

        return null;
    }

    private bool Holds(StripRing ring, bool clear)
    {
        Box box = Around(ring.At, ring.RadiusMm + 0.3);
        if (!Within(box) || Taken(box) || Crossed(hard, box))
        {
            return false;
        }

        Vec2 foot = ring.Foot!.Value;
        // A fault is sawn off where it begins and ends: so near to the cut the line may come upon it, and no nearer to anything else.
        Vec2 off = foot + (ClearMm * (ring.At - foot).Unit());
        if (Struck(kept, ring.Edge, foot) || Struck(faults, ring.Edge, off))
        {
            return false;
        }

        // The line to the cut crosses no other cut before it is there.
        Vec2 before = foot + (0.2 * (ring.At - foot).Unit());
        return !clear
            || !(
                Crossed(lines, box) || Met(lines, ring.Edge, before) || Met(hard, ring.Edge, before)
            );
    }

    /// <summary>Asked so often that most lines are told by their ends.</summary>
    private static bool Crossed(List<(Vec2 A, Vec2 B)> lines, Box box)
    {
        foreach ((Vec2 a, Vec2 b) in lines)
        {
            if (
                (a.X >= box.Left || b.X >= box.Left)
                && (a.X <= box.Right || b.X <= box.Right)
                && (a.Y >= box.Bottom || b.Y >= box.Bottom)
                && (a.Y <= box.Top || b.Y <= box.Top)
                && Segments.Clip(a, b, box) is not null
            )
            {
                return true;
            }
        }

        return false;
    }

    private bool Taken(Box box) => Taken(kept, box) || Taken(faults, box);

    private static bool Taken(List<Box> by, Box box)
    {
        foreach (Box other in by)
        {
            if (other.Overlaps(box))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a line comes upon something that is kept clear, or as good as upon it.</summary>
    private static bool Struck(List<Box> of, Vec2 from, Vec2 to, double clearMm = 0.3)
    {
        foreach (Box other in of)
        {
            if (Segments.Clip(from, to, other.Within(-clearMm)) is not null)
            {
                return true;
            }
        }

        return false;
    }

    private static bool Met(List<(Vec2 A, Vec2 B)> lines, Vec2 from, Vec2 to)
    {
        foreach ((Vec2 a, Vec2 b) in lines)
        {
            if (Segments.Meet(from, to, a, b))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>On the board, or in what is left beside it for this.</summary>
    private bool Within(Box box) =>
        box.Left >= room.Left
        && box.Right <= room.Right
        && box.Top <= room.Top
        && box.Bottom >= room.Bottom;

    private Vec2? OnLine(ImmutableArray<Vec2> line, double radius)
    {
        foreach (double t in Along)
        {
            Vec2 at = line[0] + (t * (line[^1] - line[0]));
            Box box = Around(at, radius + 0.3);
            if (
                Within(box)
                && !Taken(box)
                && !Crossed(hard, box)
                && lines.Count(l => Segments.Clip(l.A, l.B, box) is not null) <= Own(line, box)
            )
            {
                return at;
            }
        }

        return null;
    }

    /// <summary>How many of a line's own stretches come into a box.</summary>
    private static int Own(ImmutableArray<Vec2> line, Box box)
    {
        int own = 0;
        for (int i = 1; i < line.Length; i++)
        {
            own += Segments.Clip(line[i - 1], line[i], box) is null ? 0 : 1;
        }

        return own;
    }
}
