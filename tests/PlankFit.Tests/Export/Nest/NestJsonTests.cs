using System.Text.Json;
using PlankFit.Export.Stock;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Export.Nest;

/// <summary>What a plan of cutting says of a piece as numbers, against its outline in the same file.</summary>
public sealed class NestJsonTests
{
    /// <summary>Its upper edge is its longest, and rises by this.</summary>
    private static readonly double Rises = Degrees(new(1020, 50));

    /// <summary>
    /// The tilt is the turn from the grain, counter-clockwise, of a piece that lies end for end and face for face as is said: on a board, and on a sheet whose grain
    /// runs across, where the grain begins at the upper edge and runs down.
    /// </summary>
    [Theory]
    [InlineData(false, false, 0.1)]
    [InlineData(true, false, -2.75)]
    [InlineData(false, true, 1.5)]
    [InlineData(true, true, 0)]
    public void TheTiltIsFromTheGrainOnEveryBoard(bool turned, bool faceDown, double tilt)
    {
        SawPiece piece = SawPieces.Of(
            "S1-04",
            new(0, 0),
            new(1000, 0),
            new(1020, 150),
            new(0, 100)
        );
        StockBoard board = SawPieces.Board("B-01", 2440, 1220),
            sheet =
                SawPieces.Board("S-01", 1220, 2440) with
                {
                    Kind = StockKind.Sheet,
                    GrainAcross = true,
                };
        LaidPiece laid = new(piece, turned, faceDown, tilt, new(1200, 600));
        NestPlan nest = HandMadePlan.Plan with
        {
            Spec = SawPieces.Spec(board, sheet),
            Boards =
            [
                new("B-01", board, [], [laid]),
                // A quarter turn clockwise brings the grain to run down the sheet.
                new(
                    "S-01",
                    sheet,
                    [],
                    [
                        laid with
                        {
                            TiltDegrees = tilt - 90,
                            Shift = new(laid.Shift.Y, 2440 - laid.Shift.X),
                        },
                    ]
                ),
            ],
            Unplaced = [],
        };
        using var stream = new MemoryStream();
        NestJson.Write(PrismaticPlan.Build() with { Nest = nest }, stream);
        using var json = JsonDocument.Parse(stream.ToArray());
        int told = 0;
        foreach (JsonElement of in json.RootElement.GetProperty("boards").EnumerateArray())
        {
            JsonElement only = Assert.Single(of.GetProperty("pieces").EnumerateArray().ToArray());
            bool across = of.GetProperty("grainAcross").GetBoolean();
            Vec2[] outline =
            [
                .. only.GetProperty("outline")
                    .EnumerateArray()
                    .Select(p => new Vec2(p[0].GetDouble(), p[1].GetDouble()))
                    .Select(p => across ? new Vec2(2440 - p.Y, p.X) : p),
            ];
            Vec2 longest = outline
                .Zip(outline.Skip(1).Append(outline[0]), (a, b) => b - a)
                .MaxBy(e => e.Norm);
            double turn = Degrees(longest) - (faceDown ? -Rises : Rises);
            Assert.Equal(tilt, only.GetProperty("tiltDegrees").GetDouble(), 1e-6);
            // To ten thousandths of a millimetre a metre is long; a half turn is told apart.
            Assert.Equal(tilt, turn, 2e-5);
            Assert.Equal(turned, only.GetProperty("turned").GetBoolean());
            told++;
        }

        Assert.Equal(2, told);
    }

    /// <summary>Of an edge, whichever way it is gone along: more than -90, 90 at the most.</summary>
    private static double Degrees(Vec2 edge)
    {
        double degrees = double.RadiansToDegrees(Math.Atan2(edge.Y, edge.X));
        return degrees > 90 ? degrees - 180
            : degrees <= -90 ? degrees + 180
            : degrees;
    }
}
