using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Planking.Stock;

/// <summary>Cuts of boards worked by hand: right angles, 45 degrees and the kerf's slanting width 3 times the root of 2.</summary>
public sealed class BoardCutsTests
{
    private const double Near = 0.01;
    private static readonly double Slant = 3 * Math.Sqrt(2);

    private static BoardCutList Cut(
        double length,
        double width,
        ImmutableArray<SawnLane> lanes,
        params ImmutableArray<LaidPiece> pieces
    )
    {
        StockBoard board = SawPieces.Board("B-01", length, width);
        return Cut(board, lanes, pieces);
    }

    private static BoardCutList Cut(
        StockBoard board,
        ImmutableArray<SawnLane> lanes,
        ImmutableArray<LaidPiece> pieces
    ) => BoardCuts.Of(new("B-01", board, lanes, pieces), SawPieces.Spec(board));

    private static LaidPiece At(SawPiece piece, double x, double y, bool turned = false) =>
        new(piece, turned, false, 0, new(x, y));

    private static void Is(
        SawCut cut,
        CutKind kind,
        string? endOf,
        string? beginOf,
        double fromX,
        double fromY,
        double toX,
        double toY,
        double degrees
    )
    {
        Assert.Equal(
            (kind, endOf, beginOf),
            (cut.Kind, cut.EndOf?.ToString(), cut.BeginOf?.ToString())
        );
        Assert.Equal(fromX, cut.From.X, Near);
        Assert.Equal(fromY, cut.From.Y, Near);
        Assert.Equal(toX, cut.To.X, Near);
        Assert.Equal(toY, cut.To.Y, Near);
        Assert.Equal(degrees, cut.DegreesFromSquare, Near);
    }

    /// <summary>One slanting cut parts the two; the last end comes before the first, which lies nearer to its board's end.</summary>
    [Fact]
    public void ParallelEndsAreOneCut()
    {
        double pitch = 1000 + Slant;
        BoardCutList cuts = Cut(
            2400,
            150,
            [],
            At(SawPieces.Parallelogram("S1-01", 1000, 150, 45), 0, 0),
            At(SawPieces.Parallelogram("S1-02", 1000, 150, 45), pitch, 0)
        );
        Assert.Equal(3, cuts.Cuts.Length);
        Is(cuts.Cuts[0], CutKind.Crosscut, "S1-01", "S1-02", 1000, 0, 1150, 150, 45);
        Assert.True(cuts.Cuts[0].IsShared);
        Assert.Equal(3, cuts.Cuts[0].KerfMm);
        Is(cuts.Cuts[1], CutKind.Crosscut, "S1-02", null, 1000 + pitch, 0, 1150 + pitch, 150, 45);
        Is(cuts.Cuts[2], CutKind.Crosscut, null, "S1-01", 0, 0, 150, 150, 45);
        Assert.Equal(-3, cuts.Cuts[2].KerfMm);
        Assert.Equal([1, 2, 3], cuts.Cuts.Select(c => c.Number));
    }

    [Fact]
    public void PlacesAreToldAlongTheBoard()
    {
        double pitch = 1000 + Slant;
        StockBoard board = SawPieces.Board("B-01", 2400, 150) with { OtherEndMm = 40 };
        BoardCutList cuts = Cut(
            board,
            [],
            [
                At(SawPieces.Parallelogram("S1-01", 1000, 150, 45), 0, 0),
                At(SawPieces.Parallelogram("S1-02", 1000, 150, 45), pitch, 0),
            ]
        );
        Assert.Equal(
            [
                ("S1-01", 0.0, 1150.0, 1210.0),
                ("S1-02", pitch, 1150 + pitch, Math.Round(1210 - pitch, 9)),
            ],
            cuts.Places.Select(p =>
                (p.PieceId.ToString(), p.FromMm, p.ToMm, Math.Round(p.LeftMm, 9))
            )
        );
        CutOut end = Assert.Single(cuts.CutOuts);
        Assert.Equal(
            (2360, 2400, 0, 150, true),
            (end.FromMm, end.ToMm, end.LowMm, end.HighMm, end.IsEnd)
        );
    }

    /// <summary>900 below and 600 above, then turned: the ends between lean alike, and the last leans the other way.</summary>
    [Fact]
    public void TrapezoidsHeadToTail()
    {
        double second = 750 + Slant;
        BoardCutList cuts = Cut(
            3000,
            150,
            [],
            At(SawPieces.Trapezoid("S1-01", 900, 600, 150), 0, 0),
            At(SawPieces.Trapezoid("S1-02", 900, 600, 150), second + 900, 150, turned: true)
        );
        Assert.Equal(3, cuts.Cuts.Length);
        SawCut shared = Assert.Single(cuts.Cuts, c => c.IsShared);
        Is(shared, CutKind.Crosscut, "S1-01", "S1-02", 900, 0, 750, 150, -45);
        Is(
            Assert.Single(cuts.Cuts, c => c.EndOf == Named.Piece("S1-02")),
            CutKind.Crosscut,
            "S1-02",
            null,
            second + 750,
            0,
            second + 900,
            150,
            45
        );
    }

    /// <summary>Ends that lean apart by 5 degrees are two cuts, a kerf apart at one edge: tan 40 and tan 45 of 150.</summary>
    [Fact]
    public void EndsThatAreNotParallelAreTwoCuts()
    {
        SawPiece first = SawPieces.Parallelogram("S1-01", 1000, 150, 45),
            second = SawPieces.Parallelogram("S1-02", 1000, 150, 50);
        double lean = 150 / Math.Tan(50 * Math.PI / 180),
            at = 1150 + Slant - lean;
        BoardCutList cuts = Cut(3000, 150, [], At(first, 0, 0), At(second, at, 0));
        Assert.DoesNotContain(cuts.Cuts, c => c.IsShared);
        Is(
            Assert.Single(cuts.Cuts, c => c.EndOf == Named.Piece("S1-01")),
            CutKind.Crosscut,
            "S1-01",
            null,
            1000,
            0,
            1150,
            150,
            45
        );
        Is(
            Assert.Single(cuts.Cuts, c => c.BeginOf == Named.Piece("S1-02")),
            CutKind.Crosscut,
            null,
            "S1-02",
            at,
            0,
            at + lean,
            150,
            40
        );
    }

    /// <summary>
    /// Corner to corner a kerf apart, or a kerf and so much more, leaning to each other: either end carried on would take the other's corner, a square cut between
    /// does not. What is more than the kerf is left half on each side of it.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    public void ACutBetweenPartsWhatIsInEachOthersWay(double more)
    {
        BoardCutList cuts = Cut(
            3000,
            150,
            [],
            At(SawPieces.Parallelogram("S1-01", 1000, 150, 45), 100, 0),
            At(SawPieces.Parallelogram("S1-02", 1000, 150, 135), 1403 + more, 0)
        );
        Assert.Equal(5, cuts.Cuts.Length);
        SawCut parting = Assert.Single(cuts.Cuts, c => c.Kind == CutKind.Parting);
        double half = 1250 + (more / 2);
        Is(parting, CutKind.Parting, "S1-01", "S1-02", half, 0, half, 150, 0);
        int at = cuts.Cuts.IndexOf(parting);
        Assert.True(
            at
                < cuts.Cuts.IndexOf(
                    cuts.Cuts.Single(c => c.EndOf == Named.Piece("S1-01") && c != parting)
                )
        );
        Assert.True(
            at
                < cuts.Cuts.IndexOf(
                    cuts.Cuts.Single(c => c.BeginOf == Named.Piece("S1-02") && c != parting)
                )
        );
    }

    /// <summary>A round of 1 mm on a chord from corner to corner.</summary>
    [Fact]
    public void ARoundEndIsSawnToTheLine()
    {
        Vec2 low = new(1000, 0),
            high = new(1150, 150),
            way = (high - low).Unit();
        Vec2[] round =
        [
            .. Enumerable
                .Range(1, 9)
                .Select(i => low + (0.1 * i * (high - low)) - (0.04 * i * (10 - i) * way.Left())),
        ];
        SawPiece piece = SawPieces.Of("S1-01", [new(0, 0), low, .. round, high, new(0, 150)]);
        SawCut cut = Assert.Single(Cut(2000, 150, [], At(piece, 0, 0)).Cuts);
        Is(cut, CutKind.Crosscut, "S1-01", null, 1000, 0, 1150, 150, 45);
        Assert.True(cut.ToTheLine);
        Assert.Equal(1, cut.OffMm, 1e-9);
        Assert.Equal(11, cut.Line.Length);
    }

    /// <summary>150 wide, then 130: the edge falls 20 in 1000.</summary>
    [Fact]
    public void ATaperedEdgeIsSawnAlongThePiece()
    {
        SawPiece piece = SawPieces.Of(
            "S1-01",
            new(0, 0),
            new(1000, 0),
            new(1000, 130),
            new(0, 150)
        );
        BoardCutList cuts = Cut(2000, 150, [], At(piece, 0, 0));
        Assert.Equal(2, cuts.Cuts.Length);
        Is(cuts.Cuts[0], CutKind.Crosscut, "S1-01", null, 1000, 0, 1000, 150, 0);
        SawCut edge = cuts.Cuts[1];
        Assert.Equal(CutKind.Edge, edge.Kind);
        Assert.Equal(0, edge.From.X, 1e-9);
        Assert.Equal(150, edge.From.Y, 1e-9);
        Assert.Equal(1000, edge.To.X, 1e-9);
        Assert.Equal(130, edge.To.Y, 1e-9);
        Assert.Equal(3, edge.KerfMm);
    }

    [Theory]
    [InlineData(303, 153, 303, "150")]
    [InlineData(320, 153, 303, "150 303")]
    [InlineData(320, 160, 310, "160 150 310")]
    public void LanesAreRippedApart(double width, double low, double high, string at)
    {
        BoardCutList cuts = Cut(
            1000,
            width,
            [new(0, 150, [Named.Piece("S1-01")]), new(low, high, [Named.Piece("S1-02")])],
            At(SawPieces.Rectangle("S1-01", 1000, 150), 0, 0),
            At(SawPieces.Rectangle("S1-02", 1000, 150), 0, low)
        );
        // The board's own ends serve, and every rip goes over its whole length.
        Assert.All(
            cuts.Cuts,
            c => Assert.Equal((CutKind.Rip, 0, 1000), (c.Kind, c.From.X, c.To.X))
        );
        Assert.Equal(
            at.Split(' ')
                .Select(w => double.Parse(w, System.Globalization.CultureInfo.InvariantCulture)),
            cuts.Cuts.Select(c => c.From.Y)
        );
    }

    /// <summary>Four pieces of 500 with kerfs of 3 from 20 on, in 2400: the middle first, then the halves of the longer part, the short ends last.</summary>
    [Fact]
    public void TheMostEvenHalvesComeFirst()
    {
        BoardCutList cuts = Cut(
            2400,
            150,
            [],
            [
                .. Enumerable
                    .Range(0, 4)
                    .Select(i =>
                        At(SawPieces.Rectangle($"S1-0{i + 1}", 500, 150), 20 + (503 * i), 0)
                    ),
            ]
        );
        // Shorter sides: 1023 at 1023; then 503 both at 520 and at 1526, the nearer first; 2029 leaves 371, 20 leaves 20.
        Assert.Equal([1023, 520, 1526, 2029, 20], cuts.Cuts.Select(c => Math.Round(c.From.X, 6)));
    }

    [Fact]
    public void ASheetWhoseGrainRunsAcrossIsTurned()
    {
        NestPlan plan = HandMadePlan.Plan;
        SawnBoard sheet = plan.Boards[1];
        BoardCutList cuts = BoardCuts.Of(sheet, plan.Spec);
        Assert.Equal((2440, 1220), (cuts.Frame.LengthMm, cuts.Frame.WidthMm));
        Is(
            Assert.Single(cuts.Cuts, c => c.EndOf == Named.Piece("S1-05")),
            CutKind.Crosscut,
            "S1-05",
            null,
            1086.7,
            0,
            1086.7 - (150 / Math.Tan(60 * Math.PI / 180)),
            150,
            -30
        );
        Assert.Equal(150, Assert.Single(cuts.Cuts, c => c.Kind == CutKind.Rip).From.Y);
    }
}
