using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Fastenings;

/// <summary>What one plank's fastenings are set among, in its frame, thinned as <see cref="Lines"/> says.</summary>
internal sealed class PlankGround
{
    public PlankGround(
        FramedPlank plank,
        ImmutableArray<FramingCrossing> behind,
        ImmutableArray<PlankJoint> joints,
        SkinBelow below
    )
    {
        Framed = plank;
        Plank p = plank.Plank;
        Forward = Thinned(p.ForwardEdge.Flat);
        After = Thinned(p.AfterEdge.Flat);
        Ends = [.. p.Ends.Select(e => (Name(e.At), Thinned(e.NetLine)))];
        Joints =
        [
            .. joints.Select(j => new JointOnPlank(
                $"joint {j.Id}",
                Thinned(j.OuterLine),
                Thinned(j.InnerLine),
                plank.Turned(j.OuterLine.Concat(j.InnerLine.Reverse()))
            )),
        ];
        Open =
        [
            .. behind
                .Where(b => b.Of.Kind == FramingKind.Open)
                .Select(b => ($"{b.Of.Name}, kept open", Thinned(b.Cover))),
        ];
        Timber =
        [
            .. behind
                .Where(b => b.Of.Kind != FramingKind.Open)
                .Select(b => new TimberUnder(plank, b, joints)),
        ];
        LinesBelow = below.LinesUnder(plank);
    }

    public FramedPlank Framed { get; }

    public Vec2[] Forward { get; }

    public Vec2[] After { get; }

    public ImmutableArray<(string Name, Vec2[] Line)> Ends { get; }

    public ImmutableArray<JointOnPlank> Joints { get; }

    /// <summary>Places kept open.</summary>
    public ImmutableArray<(string Name, Vec2[] Cover)> Open { get; }

    public ImmutableArray<TimberUnder> Timber { get; }

    /// <summary>Seams and joints of the skin next below.</summary>
    public ImmutableArray<(string What, Vec2[] Line)> LinesBelow { get; }

    private Vec2[] Thinned(ImmutableArray<Vec2> line) => Lines.Thinned(Framed.Turned(line));

    private static string Name(PanelEdge edge) => Panel.BottomWordOf(edge);
}

/// <summary>A joint: its lines on both faces, and what lies between them.</summary>
internal sealed record JointOnPlank(string Name, Vec2[] Outer, Vec2[] Inner, Vec2[] Area);
