using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Fastenings;

/// <summary>The fastenings of one plank by its layer's rule.</summary>
internal sealed class FasteningLayout
{
    /// <summary>What a fastening of the same plank is to the others.</summary>
    public const string FasteningBeside = "the fastening beside it";

    private readonly PlankGround ground;
    private readonly FramedPlank plank;
    private readonly LayerFastenings layer;
    private readonly Clearance clear = new();
    private readonly List<Fastening> points = [];
    private readonly List<TimberStretch> stretches = [];

    /// <param name="fastened">Places of the fastenings of all skins below.</param>
    public FasteningLayout(
        PlankGround ground,
        LayerFastenings layer,
        IReadOnlyList<(Uv Uv, Vec3 At)> fastened
    )
    {
        (this.ground, plank, this.layer) = (ground, ground.Framed, layer);
        Surround();
        Miss(fastened);
    }

    public FramedPlank Framed => plank;

    /// <summary>What holds for every point of the plank, those set among it.</summary>
    public Clearance Clear => clear;

    public IReadOnlyList<TimberStretch> Stretches => stretches;

    private FasteningRule Rule => layer.Rule;

    /// <summary>Fastens the plank to every timber under it, by itself.</summary>
    public void FastenToTimber()
    {
        if (Rule.Kind != FasteningKind.None)
        {
            foreach (TimberUnder timber in ground.Timber.Where(t => t.IsThere))
            {
                Along(timber);
            }
        }
    }

    /// <summary>All of the plank, once it is fastened to its timbers: with what is set between them.</summary>
    public PlankFastenings Finished()
    {
        PullDown();
        Vents();
        return new(
            plank.Plank.Id,
            [.. points.Select(f => f with { At = plank.Turned(f.At) })],
            [.. stretches.Select(s => s.Short(Rule)).OfType<FasteningGap>()]
        );
    }

    /// <summary>What holds for every point of the plank.</summary>
    private void Surround()
    {
        clear.KeepIn(plank.Net, Lines.ThinMm, "the plank's outline");
        Keep(ground.Forward, Rule.EdgeMm, "the forward seam");
        Keep(ground.After, Rule.EdgeMm, "the after seam");
        foreach ((string name, Vec2[] line) in ground.Ends)
        {
            Keep(line, Rule.EndMm, $"the end at the {name}");
        }

        foreach (JointOnPlank joint in ground.Joints)
        {
            var what = Obstacle.Of(joint.Id);
            Keep(joint.Outer, Rule.JointMm, what);
            Keep(joint.Inner, Rule.JointMm, what);
            clear.KeepOut(joint.Area, Rule.JointMm, what);
        }

        foreach ((string name, Vec2[] cover) in ground.Open)
        {
            clear.KeepOut(cover, Rule.OpenMm + Lines.ThinMm, name);
        }

        foreach ((string what, Vec2[] line) in ground.LinesBelow)
        {
            clear.KeepFromLine(line, Rule.BelowMm, what);
        }
    }

    private void Miss(IReadOnlyList<(Uv Uv, Vec3 At)> fastened)
    {
        foreach ((Uv uv, Vec3 at) in fastened)
        {
            if (plank.Flat(uv, at, Rule.MissMm) is { } flat)
            {
                clear.KeepFrom(flat, Rule.MissMm, "a fastening of a skin below");
            }
        }
    }

    private void Along(TimberUnder under)
    {
        // Without what holds for the whole plank: a copy of that would still speak of fastenings that were moved since.
        var timber = new Clearance();
        string edge = $"the edge of {under.Name}";
        timber.KeepFromLine(under.One, Rule.MarginMm + Lines.ThinMm, edge);
        timber.KeepFromLine(under.Other, Rule.MarginMm + Lines.ThinMm, edge);
        // The timber's own ends as well; seams and ends of the plank have wider rules of their own, or these are theirs.
        timber.KeepIn(
            under.Cover,
            Math.Min(Rule.MarginMm, Math.Min(Rule.EdgeMm, Rule.EndMm)) + Lines.ThinMm,
            edge
        );
        double half = Math.Max(0, (under.WidthMm / 2) - Rule.MarginMm);
        Track track =
            under.Middle
            ?? (
                under.One.Length > 1 ? new(Inset(under.One, under.Cover, Rule.MarginMm + 0.1))
                : under.Other.Length > 1 ? new(Inset(under.Other, under.Cover, Rule.MarginMm + 0.1))
                : new(Longest(under.Cover))
            );
        double[] rows = under.CarriesJoint ? [-0.95 * half, 0.95 * half] : [0];
        var stretch = new TimberStretch(this, under, track, half, timber);
        stretches.Add(stretch);
        foreach (double row in rows)
        {
            double Near(double t) => stretch.Beside.MaxBy(b => stretch.Spare(t, b));
            RowPlacing.Fill(
                track.LengthMm,
                Rule.SpacingMm,
                Rule.NearestMm,
                t => stretch.Lack(t, row),
                rows.Length == 1 && half > 0
                    ? t => stretch.Beside.Max(b => stretch.Lack(t, b))
                    : null,
                (t, off) => stretch.Set(t, off ? Near(t) : row)
            );
        }
    }

    private void PullDown()
    {
        if (Rule.PullDown is not { } rule)
        {
            return;
        }

        Clearance here = clear.Copy();
        foreach (TimberUnder timber in ground.Timber)
        {
            here.KeepOut(timber.Cover, Rule.MarginMm + Lines.ThinMm, timber.Name);
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
                t => here.Lack(track.At(t)),
                null,
                (t, _) =>
                {
                    Set(track.At(t), make);
                    here.KeepFrom(track.At(t), Rule.NearestMm, FasteningBeside);
                }
            );
        }
    }

    /// <summary>Sets a fastening into a timber.</summary>
    public void Set(Vec2 at, string backing) =>
        Set(
            at,
            p =>
                new(
                    FasteningUse.Backing,
                    Rule.Kind,
                    Rule.Shape,
                    backing,
                    p,
                    LengthFor(FasteningUse.Backing, backing)
                )
        );

    /// <summary>Takes a fastening out again.</summary>
    public void TakeOut(Vec2 at)
    {
        points.RemoveAt(points.FindIndex(f => f.At == at));
        clear.Forget(at, FasteningBeside);
    }

    private void Set(Vec2 at, Func<Vec2, Fastening> make)
    {
        points.Add(make(at));
        clear.KeepFrom(at, Rule.NearestMm, FasteningBeside);
    }

    private double? LengthFor(FasteningUse use, string? backing) =>
        layer.Lengths.FirstOrDefault(l => l.Use == use && l.Backing == backing)?.LengthMm;

    private void Keep(Vec2[] line, double leastMm, Obstacle what) =>
        clear.KeepFromLine(line, leastMm + Lines.ThinMm, what);

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
}
