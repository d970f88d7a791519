using System.Collections.Immutable;
using PlankFit.Export.Stock;
using PlankFit.Export.Tables;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Nest;

/// <summary>
/// What is marked on a piece so that it is not fitted the wrong way round: on labels and in strips the end to the keel and the arrow forward. Held against the
/// hull's own points, and against its hand: whoever looks at the outer face with the keel before him has the bow to his left on a starboard plank, to his right on a
/// port one (the boat lies upside down).
/// </summary>
public sealed class PieceMarksTests
{
    public static TheoryData<string> Plans => ["rack", "ply"];

    private static BottomPlan Plan(string which) =>
        which == "rack" ? NestedPlans.Launch : NestedPlans.Ply;

    [Theory]
    [MemberData(nameof(Plans))]
    public void LabelsPointToTheKeelAndForward(string which)
    {
        BottomPlan plan = Plan(which);
        int seen = 0;
        foreach (Drawing page in LabelPages.Of(plan, plan.Nest!))
        {
            foreach ((SawPiece piece, Vec2[] arrows) in Marked(plan, page, 2))
            {
                Vec2 forward = arrows[0],
                    keel = arrows[1];
                Assert.Equal(new Vec2(-1, 0), keel);
                Hand(piece.Side, keel, forward);
                Plank plank = plan.Find(piece.PlankId)!;
                Assert.InRange(Turn(forward, Forward(plank, p => p)), -0.5, 0.5);
                // As drawn the label is the plank's own flat shape, inboard end to the left.
                Assert.True(Inboard(plank).X < Outboard(plank).X);
                seen++;
            }
        }

        Assert.Equal(plan.Nest!.Boards.Sum(b => b.Pieces.Length), seen);
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void StripsShowTheEndToTheKeelAndForward(string which)
    {
        BottomPlan plan = Plan(which);
        int away = 0;
        foreach (SawnBoard board in plan.Nest!.Boards)
        {
            BoardCutList cuts = BoardCuts.Of(board, plan.Nest.Spec);
            Drawing sheet = CutSheets.Board(plan, plan.Nest!.Spec, board);
            ImmutableArray<StripView> views = CutSheets.OnBoard(plan, plan.Nest!.Spec, board);
            // A bar for each piece of each strip, in their order.
            Polyline[] bars =
            [
                .. sheet
                    .Shapes.OfType<Polyline>()
                    .Where(p => p.Points.Length == 2 && p.Pen.WidthMm == 0.8),
            ];
            Polyline[] grounds =
            [
                .. sheet
                    .Shapes.OfType<Polyline>()
                    .Where(p => p.Layer == Layers.Hull && p.Closed && p.Fill is not null),
            ];
            int next = 0;
            var barOf = new Dictionary<PieceId, Vec2>();
            foreach ((StripView view, Polyline ground) in views.Zip(grounds))
            {
                double left = ground.Points.Min(p => p.X),
                    factor = (ground.Points.Max(p => p.X) - left) / view.LengthMm;
                foreach (LaidPiece laid in view.Pieces)
                {
                    Polyline bar = bars[next++];
                    Vec2 middle = 0.5 * (bar.Points[0] + bar.Points[1]);
                    Plank plank = plan.Find(laid.Piece.PlankId)!;
                    double inboard = cuts.Frame.Of(laid.ToBoard(Inboard(plank))).X,
                        outboard = cuts.Frame.Of(laid.ToBoard(Outboard(plank))).X,
                        at = view.FromMm + ((middle.X - left) / factor);
                    // The piece may be half of a plank with a butt: of its own two ends it is the one that looks to the keel.
                    ImmutableArray<Vec2> own = cuts.Frame.Of(laid);
                    double least = Math.Abs(at - own.Min(p => p.X)),
                        most = Math.Abs(at - own.Max(p => p.X));
                    Assert.True(
                        inboard < outboard ? least < most : most < least,
                        $"{board.Id}, {laid.Piece.Id}"
                    );
                    barOf[laid.Piece.Id] = new(inboard < outboard ? -1 : 1, 0);
                }
            }

            Assert.Equal(bars.Length, next);
            foreach ((SawPiece piece, Vec2[] arrows) in Marked(plan, sheet, 1))
            {
                LaidPiece laid = board.Pieces.Single(p => p.Piece.Id == piece.Id);
                away += laid.FaceDown ? 1 : 0;
                Side side =
                    !laid.FaceDown ? piece.Side
                    : piece.Side == Side.Port ? Side.Starboard
                    : Side.Port;
                Hand(side, barOf[piece.Id], arrows[0]);
                Vec2 forward = Forward(
                    plan.Find(piece.PlankId)!,
                    p => cuts.Frame.Of(laid.ToBoard(p))
                );
                Assert.InRange(Turn(arrows[0], forward), -0.5, 0.5);
            }
        }

        Assert.Equal(which == "rack", away > 0);
    }

    /// <summary>The list says in words to which side of the board a piece's inboard end looks, by the board's own marks.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void TheListSaysHowEachPieceLies(string which)
    {
        BottomPlan plan = Plan(which);
        Table list = NestTables.Pieces(plan, plan.Nest!);
        var laid = plan.Nest!.Boards.SelectMany(b =>
                b.Pieces.Select(p => (Board: b.Stock, Piece: p))
            )
            .ToDictionary(p => p.Piece.Piece.Id.ToString());
        Assert.Equal(laid.Count, list.Rows.Length);
        foreach (ImmutableArray<TableCell> row in list.Rows)
        {
            (StockBoard board, LaidPiece piece) = laid[row[1].Text!];
            Plank plank = plan.Find(piece.Piece.PlankId)!;
            Vec2 way = piece.ToBoard(Inboard(plank)) - piece.ToBoard(Outboard(plank));
            string end =
                Math.Abs(way.X) > Math.Abs(way.Y)
                    ? (way.X < 0 ? "marked end" : "far end")
                    : (way.Y < 0 ? "marked edge" : "edge that is not marked");
            string face = piece.FaceDown ? "outer face away from you" : "outer face towards you";
            Assert.Equal($"{face}, inboard end to the {end}", row[5].Text);
            Assert.Equal(board.GrainAcross, Math.Abs(way.Y) > Math.Abs(way.X));
        }
    }

    /// <summary>Left of the keel to starboard, right of it to port.</summary>
    private static void Hand(Side side, Vec2 keel, Vec2 forward) =>
        Assert.Equal(side == Side.Starboard ? 1 : -1, Math.Sign(keel.Cross(forward)));

    /// <summary>Every bold id, and the directions of so many arrows drawn next after it.</summary>
    private static IEnumerable<(SawPiece Piece, Vec2[] Arrows)> Marked(
        BottomPlan plan,
        Drawing sheet,
        int arrows
    )
    {
        var pieces = plan.Nest!.Boards.SelectMany(b => b.Pieces)
            .ToDictionary(p => p.Piece.Id.ToString(), p => p.Piece);
        ImmutableArray<Shape> shapes = [.. sheet.Shapes];
        for (int i = 0; i < shapes.Length; i++)
        {
            if (
                shapes[i] is Lettering { Bold: true, Layer: var layer } id
                && pieces.TryGetValue(id.Text, out SawPiece? piece)
            )
            {
                Vec2[] found =
                [
                    .. shapes
                        .Skip(i + 1)
                        .TakeWhile(s => s is not Lettering { Bold: true })
                        .OfType<Polyline>()
                        .Where(p => p.Closed && p.Points.Length == 3 && p.Fill == 0)
                        .Take(arrows)
                        .Select(p => (p.Points[0] - (0.5 * (p.Points[1] + p.Points[2]))).Unit()),
                ];
                // In a table the id stands without an arrow.
                if (found.Length == arrows)
                {
                    yield return (piece, found);
                }
            }
        }
    }

    private static double Turn(Vec2 a, Vec2 b) => Math.Atan2(a.Cross(b), a.Dot(b)) * 180 / Math.PI;

    /// <summary>
    /// Where the hull's forward points on a flat piece, as it lies: across the line that joins the two points of one x that are furthest apart, towards the points
    /// of less x. No least squares.
    /// </summary>
    private static Vec2 Forward(Plank plank, Func<Vec2, Vec2> laid)
    {
        // The x of a plank that runs diagonally is crossed by both its edges; the chord between the crossings lies along a station.
        double middle = (plank.Outline.Min(p => p.X) + plank.Outline.Max(p => p.X)) / 2;
        var crossings = new List<Vec2>();
        for (int i = 0; i < plank.Outline.Length; i++)
        {
            int j = (i + 1) % plank.Outline.Length;
            double a = plank.Outline[i].X - middle,
                b = plank.Outline[j].X - middle;
            if (a > 0 != b > 0)
            {
                crossings.Add(
                    plank.FlatNet[i] + (a / (a - b) * (plank.FlatNet[j] - plank.FlatNet[i]))
                );
            }
        }

        Vec2 from = laid(crossings[0]),
            to = laid(crossings.MaxBy(c => c.ChordTo(crossings[0]))),
            across = (to - from).Unit(),
            forward = new(-across.Y, across.X),
            foremost = laid(plank.FlatNet[plank.Outline.IndexOf(plank.Outline.MinBy(p => p.X))]),
            aftmost = laid(plank.FlatNet[plank.Outline.IndexOf(plank.Outline.MaxBy(p => p.X))]);
        return (foremost - aftmost).Dot(forward) < 0 ? -1 * forward : forward;
    }

    private static Vec2 Inboard(Plank plank) =>
        plank.FlatNet[plank.Outline.IndexOf(plank.Outline.MinBy(p => Math.Abs(p.Y)))];

    private static Vec2 Outboard(Plank plank) =>
        plank.FlatNet[plank.Outline.IndexOf(plank.Outline.MaxBy(p => Math.Abs(p.Y)))];
}
