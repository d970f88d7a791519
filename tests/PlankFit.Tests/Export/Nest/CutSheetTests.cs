using System.Collections.Immutable;
using PlankFit.Export;
using PlankFit.Export.Sheets;
using PlankFit.Geometry;
using PlankFit.Planking;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Export.Nest;

/// <summary>Cut sheets as they are read at the saw: nothing on anything else, every number and name there, figures as worked by hand.</summary>
public sealed class CutSheetTests
{
    public static TheoryData<string> Plans => ["rack", "yard", "ply", "by hand"];

    private static BottomPlan Plan(string which) =>
        which switch
        {
            "rack" => NestedPlans.Launch,
            "yard" => NestedPlans.Skiff,
            "ply" => NestedPlans.Ply,
            _ => PrismaticPlan.Build(new()) with { Nest = HandMadePlan.Plan },
        };

    [Theory]
    [MemberData(nameof(Plans))]
    public void Nothing_stands_on_anything_else(string which)
    {
        BottomPlan plan = Plan(which);
        None(
            Sheets(plan)
                .SelectMany(d => SheetCheck.Faults(d).Concat(SheetCheck.Struck(d, _ => true)))
        );
    }

    /// <summary>On the drawing of a board every cut has its number in a ring and in the table, every piece its name in the strip and in the table.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void Every_cut_and_every_piece_is_named(string which)
    {
        BottomPlan plan = Plan(which);
        foreach (BoardCutList cuts in NestCuts.Of(plan))
        {
            Drawing sheet = CutSheets.Board(plan, cuts.Board);
            string[] words = [.. sheet.Shapes.OfType<Lettering>().Select(l => l.Text)];
            foreach (SawCut cut in cuts.Cuts)
            {
                Assert.True(words.Count(w => w == NumberText.Trimmed(cut.Number, 0)) >= 2);
            }

            Assert.Equal(cuts.Cuts.Length, Rings(sheet).Count());
            foreach (LaidPiece piece in cuts.Board.Pieces)
            {
                Assert.True(words.Count(w => w == piece.Piece.Id) >= 2, piece.Piece.Id);
            }

            Assert.Equal(
                cuts.Board.Pieces.Count(p => p.FaceDown),
                words.Count(w => w == "outer face away")
            );
        }
    }

    /// <summary>A name is on its own piece, or on none.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void No_name_stands_on_another_piece(string which)
    {
        BottomPlan plan = Plan(which);
        foreach (BoardCutList cuts in NestCuts.Of(plan))
        {
            Drawing sheet = CutSheets.Board(plan, cuts.Board);
            Polyline[] wood =
            [
                .. sheet
                    .Shapes.OfType<Polyline>()
                    .Where(p => p.Layer == Layers.Cut && p.Closed && p.Fill is not null),
            ];
            Assert.Equal(cuts.Board.Pieces.Length, wood.Length);
            foreach ((LaidPiece piece, Polyline own) in cuts.Board.Pieces.Zip(wood))
            {
                Lettering name = sheet
                    .Shapes.OfType<Lettering>()
                    .First(l => l.Text == piece.Piece.Id);
                var letters = BoardLaws.Shape(SheetCheck.Corners(name));
                Assert.DoesNotContain(
                    wood,
                    w => w != own && BoardLaws.Shape(w.Points).Intersects(letters)
                );
            }
        }
    }

    /// <summary>A number stands on its own cut, or a thin line leads from it to there.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void Every_number_leads_to_its_cut(string which)
    {
        BottomPlan plan = Plan(which);
        foreach (BoardCutList cuts in NestCuts.Of(plan))
        {
            Drawing sheet = CutSheets.Board(plan, cuts.Board);
            Polyline strip = sheet
                .Shapes.OfType<Polyline>()
                .First(p => p.Layer == Layers.Hull && p.Closed);
            Vec2 corner = new(strip.Points.Min(p => p.X), strip.Points.Min(p => p.Y));
            double factor = (strip.Points.Max(p => p.X) - corner.X) / cuts.Frame.LengthMm;
            foreach (SawCut cut in cuts.Cuts)
            {
                string number = NumberText.Trimmed(cut.Number, 0);
                CircleShape ring = Rings(sheet)
                    .Single(r =>
                        sheet
                            .Shapes.OfType<Lettering>()
                            .Any(l => l.Text == number && l.At.ChordTo(r.Centre) < 1e-9)
                    );
                Vec2[] reaches =
                [
                    ring.Centre,
                    .. sheet
                        .Shapes.OfType<Polyline>()
                        .Where(l =>
                            l.Points.Length == 2
                            && Math.Abs(l.Points[0].ChordTo(ring.Centre) - ring.RadiusMm) < 1e-9
                        )
                        .Select(l => l.Points[1]),
                ];
                Assert.True(
                    reaches.Any(p => Off(cut, (p - corner) / factor) * factor < 0.2),
                    $"{cuts.Board.Id}, {number}"
                );
            }
        }
    }

    /// <summary>Two parallelograms at 45 degrees with a kerf of 3: 1000 and 1150, and the second 1000 and 3 times the root of 2 further on.</summary>
    [Fact]
    public void Figures_are_those_worked_by_hand()
    {
        double pitch = 1000 + (3 * Math.Sqrt(2));
        StockBoard board = SawPieces.Board("B-01", 2400, 150);
        ImmutableArray<LaidPiece> pieces =
        [
            new(SawPieces.Parallelogram("S1-01", 1000, 150, 45), false, false, 0, new(0, 0)),
            new(SawPieces.Parallelogram("S1-02", 1000, 150, 45), false, false, 0, new(pitch, 0)),
        ];
        NestPlan nest = HandMadePlan.Plan with
        {
            Spec = SawPieces.Spec(board),
            Boards = [new("B-01", board, [], pieces)],
        };
        Assert.Equal(
            [
                "1|across|S1-01 | S1-02|1000|1150|45° to the right",
                "2|across|end of S1-02|2004|2154|45° to the right",
                "3|across|begin S1-01|0|150|45° to the right",
            ],
            Rows(nest, LengthUnit.Millimetre)
        );
        // To 1/32 in: 1000 mm are 39 3/8 in; 1150 are 45 9/32; 2004.24 are 78 29/32; 2154.24 are 84 13/16; 150 are 5 29/32.
        Assert.Equal(
            [
                "1|across|S1-01 | S1-02|3-3-3|3-9-2 1/4|45° to the right",
                "2|across|end of S1-02|6-6-7 1/4|7-0-6+|45° to the right",
                "3|across|begin S1-01|0-0-0|0-5-7 1/4|45° to the right",
            ],
            Rows(nest, LengthUnit.FeetInchesEighths)
        );
    }

    /// <summary>In a sheet whose grain runs across nothing is measured from the marked end along it, and the sheet says so.</summary>
    [Fact]
    public void A_turned_sheet_says_from_where_it_is_measured()
    {
        BottomPlan plan = Plan("by hand");
        string words = Words(
            CutSheets.Board(plan, plan.Nest!.Boards.Single(b => b.Stock.GrainAcross))
        );
        Assert.Contains(
            "lengths are from the edge that is not marked",
            words,
            StringComparison.Ordinal
        );
        Assert.Contains("marked edge at the right", words, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void Every_sheet_has_the_caution(string which)
    {
        foreach (Drawing sheet in Sheets(Plan(which)))
        {
            foreach (
                string asked in new[]
                {
                    "both sides of every cut",
                    "eyes, ears",
                    "dust",
                    "saw maker's instructions",
                }
            )
            {
                Assert.Contains(asked, Words(sheet), StringComparison.Ordinal);
            }
        }
    }

    private static IEnumerable<Drawing> Sheets(BottomPlan plan) =>
        CutSheets
            .Of(plan, plan.Nest!)
            .Concat(plan.Nest!.Boards.Select(b => CutSheets.Board(plan, b)));

    private static string Words(Drawing sheet) =>
        string.Join(' ', sheet.Shapes.OfType<Lettering>().Select(l => l.Text));

    private static IEnumerable<string> Rows(NestPlan nest, LengthUnit unit)
    {
        BottomPlan plan = PrismaticPlan.Build(new()) with { Nest = nest };
        plan = plan with { Job = plan.Job with { Units = unit } };
        Lettering[] words = [.. CutSheets.Board(plan, nest.Boards[0]).Shapes.OfType<Lettering>()];
        Lettering head = words.Single(w => w.Text == "makes"),
            last = words.Single(w => w.Text == "leans");
        return words
            .Where(w => w.At.Y < head.At.Y && w.LeftEnd().X < last.At.X && w.Text.Length > 0)
            .GroupBy(w => Math.Round(w.At.Y, 3))
            .OrderByDescending(g => g.Key)
            .Take(3)
            .Select(g => string.Join('|', g.OrderBy(w => w.LeftEnd().X).Select(w => w.Text)));
    }

    private static IEnumerable<CircleShape> Rings(Drawing sheet) =>
        sheet.Shapes.OfType<CircleShape>().Where(c => c.Fill == 1);

    /// <summary>From a place on the board to a cut, mm.</summary>
    private static double Off(SawCut cut, Vec2 at)
    {
        IReadOnlyList<Vec2> line = cut.ToTheLine ? cut.Line : [cut.From, cut.To];
        return Enumerable
            .Range(1, line.Count - 1)
            .Min(i =>
            {
                Vec2 side = line[i] - line[i - 1];
                double t = Math.Clamp((at - line[i - 1]).Dot(side) / side.Dot(side), 0, 1);
                return at.ChordTo(line[i - 1] + (t * side));
            });
    }

    private static void None(IEnumerable<string> faults)
    {
        string[] all = [.. faults];
        Assert.True(all.Length == 0, $"{all.Length} faults:\n" + string.Join("\n", all.Take(40)));
    }
}
