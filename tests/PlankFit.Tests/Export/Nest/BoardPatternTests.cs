using PlankFit.Export.Stock;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Export.Nest;

/// <summary>The full-size drawing of a board lies as the board does, whichever way its grain runs: what is written of it in stock.csv is where it was measured.</summary>
public sealed class BoardPatternTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void FaultsAndEndsLieWhereTheStockHasThem(bool across)
    {
        StockBoard board = SawPieces.Board("PLY-1", 2440, 1220) with
        {
            Kind = StockKind.Sheet,
            GrainAcross = across,
            MarkedEndMm = 12,
            OtherEndMm = 7,
            Faults = [new(700, 760, 200, 300), new(1500, 1520, null, null)],
        };
        LaidPiece piece = new(
            SawPieces.Rectangle("S1-01", 400, 100),
            false,
            false,
            across ? -90 : 0,
            across ? new(100, 1000) : new(100, 20)
        );
        NestPlan nest = HandMadePlan.Plan with
        {
            Spec = SawPieces.Spec(board),
            Boards = [new("PLY-1", board, [], [piece])],
        };
        Drawing drawing = BoardPattern.Of(PrismaticPlan.Build(new()), nest.Spec, nest.Boards[0]);
        Assert.Equal((2440, 1220), (drawing.WidthMm, drawing.HeightMm));
        Assert.Equal(
            [(0, 12, 0, 1220), (700, 760, 200, 300), (1500, 1520, 0, 1220), (2433, 2440, 0, 1220)],
            Boxes(drawing, Layers.Marks).Order()
        );
        Assert.Equal(
            [across ? (100, 200, 600, 1000) : (100, 500, 20, 120)],
            Boxes(drawing, Layers.Cut)
        );
    }

    /// <summary>Closed shapes of four corners on a layer, by their least and most x and y.</summary>
    private static IEnumerable<(double, double, double, double)> Boxes(
        Drawing drawing,
        string layer
    ) =>
        drawing
            .Shapes.OfType<Polyline>()
            .Where(p => p.Layer == layer && p.Closed && p.Points.Length == 4)
            .Select(p =>
                (
                    Math.Round(p.Points.Min(v => v.X), 6),
                    Math.Round(p.Points.Max(v => v.X), 6),
                    Math.Round(p.Points.Min(v => v.Y), 6),
                    Math.Round(p.Points.Max(v => v.Y), 6)
                )
            );
}
