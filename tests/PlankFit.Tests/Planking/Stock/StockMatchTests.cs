using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Stock;

/// <summary>Which boards serve which pieces, case by case as a person would judge them.</summary>
public sealed class StockMatchTests
{
    private static readonly NestSpec Spec = NestSpec.Usual with
    {
        PlaneMm = 2,
        ThickerMm = 3,
        Grades = ["clear", "select", "common"],
    };

    /// <summary>9 mm finished, 2 mm to plane, 3 mm more at the most: 11 to 14, and a rule is read to a twentieth.</summary>
    [Theory]
    [InlineData(10.9, false)]
    [InlineData(10.96, true)]
    [InlineData(11, true)]
    [InlineData(14, true)]
    [InlineData(14.04, true)]
    [InlineData(14.1, false)]
    public void ThickEnoughToPlaneAndNoThickerThanAllowed(double board, bool serves) =>
        Assert.Equal(serves, StockMatch.Piece(Spec, Board(board, null, null), Piece(null, null)));

    [Theory]
    [InlineData("douglas-fir", "douglas-fir", true)]
    [InlineData("Douglas-Fir", "douglas-fir", true)]
    [InlineData("larch", "douglas-fir", false)]
    [InlineData(null, "douglas-fir", true)]
    [InlineData("larch", null, true)]
    public void OfTheWoodWhereBothSayWhich(string? board, string? piece, bool serves) =>
        Assert.Equal(serves, StockMatch.Piece(Spec, Board(12, board, null), Piece(piece, null)));

    [Theory]
    [InlineData("clear", "select", true)]
    [InlineData("select", "select", true)]
    [InlineData("Select", "select", true)]
    [InlineData("common", "select", false)]
    [InlineData("common", null, true)]
    [InlineData(null, "common", false)]
    [InlineData("unheard of", "common", false)]
    [InlineData(null, null, true)]
    public void OfAGradeNoWorseThanAsked(string? board, string? piece, bool serves) =>
        Assert.Equal(serves, StockMatch.Piece(Spec, Board(12, null, board), Piece(null, piece)));

    private static StockBoard Board(double thickness, string? species, string? grade) =>
        new(
            "B-01",
            StockKind.Board,
            new(3600, 160, thickness),
            new(species, grade),
            new(null, 1, true),
            new(0, 0, []),
            new("stock.csv", 2)
        );

    private static SawPiece Piece(string? species, string? grade) =>
        new(
            Named.Piece("S1-07"),
            [new(0, 0), new(1000, 0), new(1000, 150), new(0, 150)],
            9,
            new(species, grade),
            new(true, false),
            null,
            false
        );
}
