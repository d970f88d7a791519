using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>The fastenings of one plank by its layer's rule.</summary>
internal sealed class PlankFastener
{
    /// <summary>Where nothing is free along the middle of a backing, these parts of its half-width less the margin are tried, to either side.</summary>
    private static readonly double[] Beside = [-0.5, 0.5, -0.95, 0.95];

    private readonly FramedPlank plank;
    private readonly LayerFastenings layer;
    private readonly ImmutableArray<BehindCrossing> behind;
    private readonly ImmutableArray<PlankJoint> joints;
    private readonly Clearance clear = new();
    private readonly List<Fastening> points = [];
    private readonly List<FasteningGap> shortOf = [];

    private PlankFastener(
        FramedPlank plank,
        LayerFastenings layer,
        ImmutableArray<BehindCrossing> behind,
        ImmutableArray<PlankJoint> joints,
        SkinBelow below
    )
    {
        (this.plank, this.layer, this.behind, this.joints) = (plank, layer, behind, joints);
        Surround();
        below.KeepFrom(clear, plank, Rule);
    }

    private FasteningRule Rule => layer.Rule;

    public static PlankFastenings Of(
        FramedPlank plank,
        LayerFastenings layer,
        ImmutableArray<BehindCrossing> behind,
        ImmutableArray<PlankJoint> joints,
        SkinBelow below
    )
    {
        var work = new PlankFastener(plank, layer, behind, joints, below);
        if (layer.Rule.Kind != FasteningKind.None)
        {
            foreach (BehindCrossing crossing in behind.Where(b => b.Of.Kind != BehindKind.Open))
            {
                work.Along(crossing);
            }
        }

        work.PullDown();
        work.Vents();
        return new(
            plank.Plank.Id,
            [.. work.points.Select(f => f with { At = plank.Turned(f.At), On = plank.On(f.At) })],
            [.. work.shortOf]
        );
    }

    /// <summary>What holds for every point of the plank.</summary>
    private void Surround()
    {
        Plank p = plank.Plank;
        clear.KeepIn(plank.Net, Lines.ThinMm, "the plank's outline");
        Keep(p.ForwardEdge.Flat, Rule.EdgeMm, "the forward seam");
        Keep(p.AfterEdge.Flat, Rule.EdgeMm, "the after seam");
        foreach (PlankEnd end in p.Ends)
        {
            Keep(end.NetLine, Rule.EndMm, $"the end at the {Name(end.At)}");
        }

        foreach (PlankJoint joint in joints)
        {
            Keep(joint.OuterLine, Rule.JointMm, $"joint {joint.Id}");
            Keep(joint.InnerLine, Rule.JointMm, $"joint {joint.Id}");
            clear.KeepOut(
                plank.Turned(joint.OuterLine.Concat(joint.InnerLine.Reverse())),
                Rule.JointMm,
                $"joint {joint.Id}"
            );
        }

        foreach (BehindCrossing open in behind.Where(b => b.Of.Kind == BehindKind.Open))
        {
            clear.KeepOut(
                Lines.Thinned(plank.Turned(open.Cover)),
                Rule.OpenMm + Lines.ThinMm,
                $"{open.Of.Name}, kept open"
            );
        }
    }

    private void Along(BehindCrossing crossing)
    {
        if (crossing.Cover.Length < 3)
        {
            return;
        }

        string name = crossing.Of.Name;
        Vec2[] cover = Lines.Thinned(plank.Turned(crossing.Cover)),
            one = Lines.Thinned(plank.Turned(crossing.OneEdge)),
            other = Lines.Thinned(plank.Turned(crossing.OtherEdge));
        Clearance here = clear.Copy();
        string edge = $"the edge of {name}";
        here.KeepFromLine(one, Rule.MarginMm + Lines.ThinMm, edge);
        here.KeepFromLine(other, Rule.MarginMm + Lines.ThinMm, edge);
        // The timber's own ends as well; seams and ends of the plank have wider rules of their own, or these are theirs.
        here.KeepIn(
            cover,
            Math.Min(Rule.MarginMm, Math.Min(Rule.EdgeMm, Rule.EndMm)) + Lines.ThinMm,
            edge
        );
        double half = Math.Max(0, (crossing.Of.WidthMm / 2) - Rule.MarginMm);
        Vec2[] centre = plank.Turned(crossing.Centre);
        Track track =
            centre.Length > 1 ? new(centre)
            : one.Length > 1 ? new(Inset(one, cover, Rule.MarginMm + 0.1))
            : other.Length > 1 ? new(Inset(other, cover, Rule.MarginMm + 0.1))
            : new(Longest(cover));
        double[] rows = joints.Any(j => Meets(j, cover)) ? [-0.95 * half, 0.95 * half] : [0];
        var placed = new List<double>();
        foreach (double row in rows)
        {
            double[] beside = rows.Length > 1 ? [] : [.. Beside.Select(b => b * half)];
            Vec2 On(double t) => track.At(t, row);
            Vec2 Near(double t) => beside.Select(b => track.At(t, b)).MaxBy(p => here.At(p));
            RowPlacing.Fill(
                track.LengthMm,
                Rule.SpacingMm,
                Rule.NearestMm,
                t => here.At(On(t)),
                beside.Length > 0 && half > 0 ? t => here.At(Near(t)) : null,
                (t, off) =>
                {
                    placed.Add(t);
                    Set(
                        off ? Near(t) : On(t),
                        here,
                        at =>
                            new(
                                FasteningUse.Backing,
                                Rule.Kind,
                                Rule.Shape,
                                name,
                                at,
                                LengthFor(FasteningUse.Backing, name)
                            )
                    );
                }
            );
        }

        NoteGap(name, track, here, placed);
    }

    private void PullDown()
    {
        if (Rule.PullDown is not { } rule)
        {
            return;
        }

        Clearance here = clear.Copy();
        foreach (BehindCrossing timber in behind.Where(b => b.Of.Kind != BehindKind.Open))
        {
            here.KeepOut(
                Lines.Thinned(plank.Turned(timber.Cover)),
                Rule.MarginMm + Lines.ThinMm,
                timber.Of.Name
            );
        }

        foreach (Fastening set in points)
        {
            here.KeepFrom(set.At, rule.SpacingMm / 2, "a fastening into the timber");
        }

        FastenerShape shape =
            rule.Kind == FasteningKind.ScrewAndPad ? FastenerShape.Screw : FastenerShape.Staple;
        double? length = LengthFor(FasteningUse.PullDown, null);
        Rows(
            here,
            rule.SpacingMm,
            rule.AcrossMm,
            at => new(FasteningUse.PullDown, rule.Kind, shape, null, at, length)
        );
    }

    private void Vents()
    {
        if (Rule.VentMm is { } spacing)
        {
            Rows(
                clear.Copy(),
                spacing,
                spacing,
                at => new(FasteningUse.Vent, FasteningKind.None, Rule.Shape, null, at, null)
            );
        }
    }

    /// <summary>Rows along the plank, evenly across what its edges leave.</summary>
    private void Rows(Clearance here, double spacing, double across, Func<Vec2, Fastening> make)
    {
        (double left, double right, double low, double high) = plank.Reach;
        double room = high - low - (2 * Rule.EdgeMm),
            nearest = Math.Min(Rule.NearestMm, spacing);
        int rows = room < nearest ? 1 : (int)Math.Ceiling((room / across) - 1e-9) + 1;
        for (int i = 0; i < rows; i++)
        {
            // A hair inside the rule, which the curve of an edge would else break all along.
            double n =
                rows == 1
                    ? (low + high) / 2
                    : low + Rule.EdgeMm + 0.5 + ((room - 1) * i / (rows - 1));
            var track = new Track([new(left, n), new(right, n)]);
            RowPlacing.Fill(
                track.LengthMm,
                spacing,
                nearest,
                t => here.At(track.At(t)),
                null,
                (t, _) => Set(track.At(t), here, make)
            );
        }
    }

    private void Set(Vec2 at, Clearance here, Func<Vec2, Fastening> make)
    {
        const string what = "the fastening beside it";
        points.Add(make(at));
        clear.KeepFrom(at, Rule.NearestMm, what);
        here.KeepFrom(at, Rule.NearestMm, what);
    }

    private double? LengthFor(FasteningUse use, string? backing) =>
        layer.Lengths.FirstOrDefault(l => l.Use == use && l.Backing == backing)?.LengthMm;

    /// <summary>Notes the widest stretch that is longer than the spacing, and what stands in the way at its best place.</summary>
    private void NoteGap(string name, Track track, Clearance here, List<double> placed)
    {
        const int looks = 24;
        double[] stops = [0, .. placed.Order(), track.LengthMm];
        (double from, double to) = Enumerable
            .Range(1, stops.Length - 1)
            .Select(i => (stops[i - 1], stops[i]))
            .MaxBy(g => g.Item2 - g.Item1);
        if (placed.Count > 0 && to - from <= Rule.SpacingMm + RowPlacing.StepMm)
        {
            return;
        }

        (double spare, string what, double asks) = Enumerable
            .Range(0, looks)
            .Select(i => here.Tightest(track.At(from + ((to - from) * (i + 0.5) / looks))))
            .MaxBy(t => t.SpareMm);
        shortOf.Add(new(name, placed.Count, to - from, what, Math.Max(0, spare + asks), asks));
    }

    private void Keep(ImmutableArray<Vec2> line, double leastMm, string what) =>
        clear.KeepFromLine(Lines.Thinned(plank.Turned(line)), leastMm + Lines.ThinMm, what);

    private bool Meets(PlankJoint joint, Vec2[] cover)
    {
        var timber = new Clearance();
        timber.KeepOut(cover, 0, "");
        var track = new Track(plank.Turned(joint.OuterLine));
        return Enumerable.Range(0, 9).Any(i => timber.At(track.At(track.LengthMm * i / 8)) < 0);
    }

    /// <summary>An edge moved into the cover.</summary>
    private static IEnumerable<Vec2> Inset(Vec2[] edge, Vec2[] cover, double byMm)
    {
        var timber = new Clearance();
        timber.KeepOut(cover, 0, "");
        var track = new Track(edge);
        double middle = track.LengthMm / 2,
            way = timber.At(track.At(middle, 0.5)) < timber.At(track.At(middle, -0.5)) ? 1 : -1;
        return Enumerable.Range(0, 9).Select(i => track.At(track.LengthMm * i / 8, way * byMm));
    }

    /// <summary>The chord between the two vertices that are furthest apart: of timber whose middle and edges all lie off the plank.</summary>
    private static Vec2[] Longest(Vec2[] shape) =>
        shape.SelectMany(a => shape.Select(b => new[] { a, b })).MaxBy(c => c[0].ChordTo(c[1]))!;

    private static string Name(HullEdge edge) => edge.ToString().ToLowerInvariant();
}
