using System.Collections.Immutable;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>
/// A plan laid by hand, with everything in it that the laws know: two lanes, a fault between pieces, ends turned, a face down, a tilt, a sheet whose grain runs
/// across, twins in one board, grades, a piece left out.
/// </summary>
internal static class HandMadePlan
{
    private const double Kerf = 3;

    /// <summary>Pitch of parallelograms at 45 degrees.</summary>
    private static readonly double Pitch = 1000 + (Kerf * Math.Sqrt(2));

    private static readonly StockBoard Board = SawPieces.Board("B-01", 3600, 306) with
    {
        Species = "douglas-fir",
        Grade = "clear",
        Count = 2,
        Price = 40,
        MarkedEndMm = 40,
        Faults = [new(2300, 2360, null, 150), new(3000, 3010, 150, 306)],
    };

    private static readonly StockBoard Sheet = SawPieces.Board("S-01", 1220, 2440) with
    {
        Kind = StockKind.Sheet,
        GrainAcross = true,
        OnHand = false,
    };

    /// <summary>Not used, and thicker.</summary>
    public static readonly StockBoard Thick = SawPieces.Board("B-09", 3600, 306) with
    {
        ThicknessMm = 12,
    };

    public static readonly ImmutableArray<SawPiece> Pieces =
    [
        SawPieces.Parallelogram("S1-01", 1000, 150, 45) with
        {
            Species = "Douglas-fir",
            LeastGrade = "select",
            Twin = Named.Piece("P1-01"),
        },
        SawPieces.Parallelogram("P1-01", 1000, 150, 45) with
        {
            Twin = Named.Piece("S1-01"),
        },
        SawPieces.Trapezoid("S1-02", 900, 600, 150),
        SawPieces.Trapezoid("S1-03", 900, 600, 150) with
        {
            MayTurnFace = true,
        },
        SawPieces.Of("S1-04", new(0, 0), new(1000, 0), new(1020, 150), new(0, 100)),
        SawPieces.Parallelogram("S1-05", 1000, 150, 120) with
        {
            MayTurnEnd = false,
        },
        SawPieces.Rectangle("S1-06", 5000, 150),
    ];

    public static NestPlan Plan
    {
        get
        {
            LaidPiece Lay(int i, bool turned, bool down, double tilt, double x, double y) =>
                new(Pieces[i], turned, down, tilt, new(x, y));
            SawnLane Lane(double low, double high, params string[] pieces) =>
                new(low, high, [.. pieces.Select(Named.Piece)]);
            SawnBoard one = new(
                "B-01.1",
                Board,
                [Lane(0, 150, "S1-01", "P1-01"), Lane(153, 306, "S1-02", "S1-03", "S1-04")],
                [
                    Lay(0, false, false, 0, 40, 0),
                    Lay(1, false, false, 0, 40 + Pitch, 0),
                    // Long side at the lane's low edge; the next with its short side there: turned, and face down, which is the same as neither for a trapezoid.
                    Lay(2, false, false, 0, 40, 153),
                    Lay(3, false, true, 0, 40 + 750 + (Kerf * Math.Sqrt(2)), 303),
                    Lay(4, true, false, 0.1, 2900, 305),
                ]
            );
            // Along s is down the sheet's width: from its upper edge.
            SawnBoard two = new(
                "S-01",
                Sheet,
                [Lane(0, 150, "S1-05")],
                [Lay(5, false, false, -90, 0, 2440 - 86.7)]
            );
            return new(
                SawPieces.Spec(Board, Sheet, Thick) with
                {
                    KerfMm = Kerf,
                    PairsTogether = true,
                    Grades = ["clear", "select", "common"],
                },
                [
                    new(
                        "9 mm",
                        [.. Pieces.Select(p => p.Id)],
                        (3600 * 306) + (1220 * 2440),
                        3e6,
                        null,
                        null,
                        0
                    ),
                ],
                [one, two],
                [new(Pieces[6], "no board is that long")],
                []
            );
        }
    }
}
