using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
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
        Ends = [.. p.Ends.Select(e => (Name(e.At), Around(e.NetLine)))];
        Joints =
        [
            .. joints.Select(j =>
            {
                Vec2[] outer = plank.TurnedAround(j.OuterLine),
                    inner = plank.TurnedAround(j.InnerLine);
                return new JointOnPlank(
                    j.Id,
                    Lines.Thinned(outer),
                    Lines.Thinned(inner),
                    [.. outer, .. inner.Reverse()]
                );
            }),
        ];
        Open =
        [
            .. behind
                .Where(b => b.Of.Kind == FramingKind.Open)
                .Select(b => ($"{b.Of.Name}, kept open", Around(b.Cover))),
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

    private Vec2[] Around(ImmutableArray<Vec2> line) => Lines.Thinned(Framed.TurnedAround(line));

    private static string Name(PanelEdge edge) => Panel.BottomWordOf(edge);
}

/// <summary>A joint: its lines on both faces, and what lies between them.</summary>
internal sealed record JointOnPlank(JointId Id, Vec2[] Outer, Vec2[] Inner, Vec2[] Area);
