using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>Ends left long are sawn at their neighbour's angle, worked by hand.</summary>
public sealed class TurnedEndsTests
{
    /// <summary>Square end, 25 beyond its net end at 1000.</summary>
    private static readonly SawPiece Long = SawPieces.Of(
        "S1-01",
        new(0, 0),
        new(1025, 0),
        new(1025, 150),
        new(0, 150)
    ) with
    {
        LongEnds = [new([new(1000, 0), new(1000, 150)], new(1, 0), 25)],
    };

    /// <summary>Its end leans 10 mm over the board's width.</summary>
    private static readonly SawPiece Leaning = SawPieces.Of(
        "S1-02",
        new(0, 0),
        new(800, 0),
        new(800, 150),
        new(10, 150)
    );

    private static SawnBoard Laid(SawPiece first, SawPiece second, double gap) =>
        TurnedEnds.Of(
            new(
                "B",
                SawPieces.Board("B", 2400, 150),
                [],
                [
                    new(first, false, false, 0, new(0, 0)),
                    new(second, false, false, 0, new(1025 + gap, 0)),
                ]
            ),
            SawPieces.Spec()
        );

    /// <summary>A kerf from the lower corner: the line leans 10 in 150, so its kerf is 3.0067 along the board; 25 is left below and 35 above.</summary>
    [Fact]
    public void TheEndGrowsToTheNeighboursAngle()
    {
        double kerf = 3 * Math.Sqrt(1 + (10.0 * 10 / (150 * 150)));
        SawnBoard board = Laid(Long, Leaning, kerf);
        SawnLong end = Assert.Single(board.Pieces[0].Long);
        Assert.True(end.Far);
        Assert.Equal(25, end.LeastMm, 1e-9);
        Assert.Equal(35, end.MostMm, 1e-9);
        Vec2[] sawn = [.. board.Pieces[0].Outline];
        Assert.Contains(sawn, v => v.ChordTo(new(1025, 0)) < 1e-9);
        Assert.Contains(sawn, v => v.ChordTo(new(1035, 150)) < 1e-9);
        NestSpec spec = SawPieces.Spec(board.Stock);
        SawCut shared = Assert.Single(BoardCuts.Of(board, spec).Cuts, c => c.IsShared);
        Assert.Equal(Math.Atan2(10, 150) * 180 / Math.PI, shared.DegreesFromSquare, 1e-9);
        Assert.Empty(BoardLaws.Broken(spec, board).Concat(SawLaws.Broken(spec, board)));
    }

    /// <summary>100 mm beyond what is asked is more than is left standing; an end that is fit stays as it is.</summary>
    [Fact]
    public void AnEndIsNotTurnedFarOrWhereItIsFit()
    {
        Assert.Null(Laid(Long, Leaning, 80).Pieces[0].Sawn);
        Assert.Null(Laid(Long with { LongEnds = [] }, Leaning, 3.1).Pieces[0].Sawn);
    }

    /// <summary>The laws see an end that is longer than told, at a fit end, or short.</summary>
    [Fact]
    public void TheLawsBreak()
    {
        SawnBoard board = Laid(Long, Leaning, 3.1);
        NestSpec spec = SawPieces.Spec(board.Stock);
        LaidPiece laid = board.Pieces[0];
        SawnBoard With(LaidPiece other) => board with { Pieces = board.Pieces.SetItem(0, other) };
        Assert.Empty(BoardLaws.Broken(spec, board));
        Assert.NotEmpty(
            BoardLaws.Broken(spec, With(laid with { Long = [laid.Long[0] with { MostMm = 30 }] }))
        );
        Assert.NotEmpty(
            BoardLaws.Broken(spec, With(laid with { Piece = Long with { LongEnds = [] } }))
        );
        Assert.NotEmpty(
            BoardLaws.Broken(
                spec,
                With(laid with { Sawn = [new(0, 0), new(1020, 0), new(1035, 150), new(0, 150)] })
            )
        );
    }

    /// <summary>On the launch: what is left long is turned often, keeps the laws, and no plan needs more cuts for it.</summary>
    [Fact]
    public void TheLaunchNeedsFewerCuts()
    {
        NestPlan plan = NestedPlans.Launch.Nest!;
        int cuts = 0,
            asked = 0,
            turned = 0;
        foreach (SawnBoard board in plan.Boards)
        {
            SawnBoard plain = board with
            {
                Pieces = [.. board.Pieces.Select(p => p with { Sawn = null, Long = [] })],
            };
            int now = BoardCuts.Of(board, plan.Spec).Cuts.Length,
                before = BoardCuts.Of(plain, plan.Spec).Cuts.Length;
            Assert.True(now <= before);
            cuts += now;
            asked += before;
            turned += board.Pieces.Sum(p => p.Long.Length);
            Assert.Empty(BoardLaws.Broken(plan.Spec, board));
            Assert.Empty(SawLaws.Broken(plan.Spec, board));
        }

        Assert.True(turned > 3 && cuts < asked, $"{turned} ends turned, {cuts} cuts for {asked}");
    }
}
