using System.Globalization;
using PlankFit.Export.Cards;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>
/// What the card of a piece is drawn by is the whole plank's: its edges by their ordinates, its widths and its ticks all lie on the net outline of the plank that it
/// is a piece of, by distances to that outline alone.
/// </summary>
public sealed class PieceFiguresTests
{
    /// <summary>The net outline is a chain: half of what its chords may lie off the curve.</summary>
    private const double OnMm = 0.02;

    public static TheoryData<string> Plans => ["butts", "scarfs"];

    private static BottomPlan Plan(string name) =>
        name == "butts" ? JointedPlans.Butts : JointedPlans.Scarfs;

    [Theory]
    [MemberData(nameof(Plans))]
    public void OrdinatesOfItsEdgesLieOnThePlanksOutline(string name)
    {
        int told = 0;
        foreach ((Plank plank, PlankPiece piece, Plank shape) in Pieces(name))
        {
            foreach (
                (PlankEdge part, PlankEdge whole) in new[]
                {
                    (shape.ForwardEdge, plank.ForwardEdge),
                    (shape.AfterEdge, plank.AfterEdge),
                }
            )
            {
                if (!part.Exists)
                {
                    continue;
                }

                Vec2 from = part.Flat[0],
                    along = (part.Flat[^1] - from).Unit();
                // The wood lies on one side of its edge: out is to the other.
                Vec2 inside = plank.FlatNet.Aggregate(default(Vec2), (sum, p) => sum + p);
                inside = (1.0 / plank.FlatNet.Length) * inside;
                Vec2 out_ = along.Left().Dot(inside - from) > 0 ? -1 * along.Left() : along.Left();
                foreach (EdgeOffset o in EdgeOffset.Of(shape, part, Unit(name)))
                {
                    Vec2 on = from + (o.AlongMm * along) + (o.OutMm * out_);
                    Assert.InRange(Off(plank.FlatNet, on), 0, OnMm);
                    Assert.InRange(Off(whole.Flat, on, closed: false), 0, OnMm);
                    told++;
                }

                // From one end of the piece to the other, and no further: both ends are on the plank, and on the piece.
                foreach (Vec2 end in new[] { part.Flat[0], part.Flat[^1] })
                {
                    Assert.InRange(Off(piece.Net, end), 0, 0.1);
                }
            }
        }

        Assert.True(told > 20, $"{told} ordinates");
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void ItsWidthsAreThePlanks(string name)
    {
        int told = 0;
        foreach ((Plank plank, PlankPiece piece, Plank shape) in Pieces(name))
        {
            foreach (WidthAt w in WidthAt.Of(shape))
            {
                if (!shape.ForwardEdge.Exists || !shape.AfterEdge.Exists)
                {
                    continue;
                }

                Assert.InRange(Off(plank.FlatNet, new(w.AtMm, w.LowMm)), 0, OnMm);
                Assert.InRange(Off(plank.FlatNet, new(w.AtMm, w.LowMm + w.WidthMm)), 0, OnMm);
                Assert.InRange(
                    w.AtMm,
                    piece.Net.Min(p => p.X) - 1e-6,
                    piece.Net.Max(p => p.X) + 1e-6
                );
                told++;
            }
        }

        Assert.True(told > 20, $"{told} widths");
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void EveryTickOfThePlankIsOnAPieceAndOnNoOther(string name)
    {
        int told = 0;
        foreach (
            IGrouping<Plank, (Plank Plank, PlankPiece Piece, Plank Shape)> plank in Pieces(name)
                .GroupBy(p => p.Plank)
        )
        {
            foreach (PlankMark mark in plank.Key.Marks)
            {
                // A tick within the thickness of a joint's line may go with either piece, or with both that overlap there.
                bool atJoint = plank.Any(p =>
                    new[] { p.Piece.Inboard, p.Piece.Outboard }
                        .OfType<PlankJoint>()
                        .SelectMany(j => new[] { j.OuterLine, j.InnerLine })
                        .Any(l => Off(l, mark.At, closed: false) < 2)
                );
                int pieces = plank.Count(p => p.Shape.Marks.Contains(mark));
                bool overlapped =
                    plank.Count(p => FlatPolygon.Holds(p.Piece.Cut, mark.At + mark.Inward)) > 1;
                Assert.True(
                    atJoint || pieces == 1 || (overlapped && pieces > 1),
                    $"{plank.Key.Id}: tick {mark.Label} is on {pieces.ToString(CultureInfo.InvariantCulture)} pieces"
                );
                foreach (
                    (_, PlankPiece piece, Plank shape) in plank.Where(p =>
                        p.Shape.Marks.Contains(mark)
                    )
                )
                {
                    Assert.InRange(Off(piece.Cut, mark.At), 0, atJoint ? 3 : OnMm);
                    told++;
                }
            }
        }

        Assert.True(told > 20, $"{told} ticks");
    }

    private static LengthUnit Unit(string name) => Plan(name).Job.Units;

    private static IEnumerable<(Plank Plank, PlankPiece Piece, Plank Shape)> Pieces(string name)
    {
        BottomPlan plan = Plan(name);
        return from layer in plan.PlankLayers
            from plank in layer.Starboard.Concat(layer.Port)
            where plan.Joints.On(plank.Id) is not null
            from of in PieceSubject
                .Of(OnPlanks.Of(plan), layer, plank)
                .Zip(plan.Joints.On(plank.Id)!.Pieces)
            select (plank, of.Second, of.First.Shape);
    }

    private static double Off(IReadOnlyList<Vec2> chain, Vec2 p, bool closed = true) =>
        Enumerable
            .Range(0, closed ? chain.Count : chain.Count - 1)
            .Min(i =>
            {
                Vec2 a = chain[i],
                    side = chain[(i + 1) % chain.Count] - a;
                double at =
                    side.Norm > 0 ? Math.Clamp((p - a).Dot(side) / side.Dot(side), 0, 1) : 0;
                return p.ChordTo(a + (at * side));
            });
}
