using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheathing;

/// <summary>The lists on paper: what to order, where to strike each piece, what to draw before wetting out, how far the cloth is sheared.</summary>
internal static class SheathingLists
{
    public static ListSheet Order(BottomPlan plan, SheathingPlan sheathing)
    {
        LengthUnit unit = plan.Job.Units;
        return new(
            new(
                "Cloth: what to order and to fetch",
                "both sides",
                SheetWords.Unit(unit),
                null,
                Cautions.Cloth
            ),
            [
                .. sheathing.Rolls.Select(r => Told(r, unit)),
                .. Missing(sheathing),
                .. Unlaid(sheathing),
            ],
            [
                new("cloth", 24, false),
                new("roll", 8),
                new("from", 12, false),
                new("wide", 14),
                new("on it", 14),
                new("used", 14),
                new("left", 14),
                new("pieces", 40, false),
            ],
            [
                .. SheathingTables
                    .Rolls(sheathing)
                    .Select(r =>
                        ImmutableArray.Create(
                            r.Plan.Cloth.Name,
                            NumberText.Trimmed(r.Roll.Number, 0),
                            r.Roll.OnHand ? "on hand" : "to buy",
                            LengthText.ForPaper(r.Roll.Roll.WidthMm, unit),
                            LengthText.ForPaper(r.Roll.Roll.LengthMm, unit),
                            LengthText.ToOrder(r.Roll.UsedMm, unit),
                            SheathingWords.Left(r.Roll, unit),
                            string.Join(", ", r.Roll.Pieces.Select(p => p.Piece.Id))
                        )
                    ),
            ]
        );
    }

    private static string Told(RollPlan plan, LengthUnit unit) =>
        $"{plan.Cloth.Name}, {AmountText.Gsm(plan.Cloth.MassGsm, unit)}: {LengthText.ToOrder(plan.ToOrderMm(unit), unit)} off the roll, each roll's length {SheathingWords.OrderedUp(unit)}; what the pieces' area takes of its width is {SheathingWords.AreaBound(plan, unit)}, less than which no plan can take.";

    private static IEnumerable<string> Missing(SheathingPlan sheathing) =>
        sheathing
            .Rolls.Where(r => !r.Missing.IsEmpty)
            .Select(r =>
                $"NO PLACE on the rolls of {r.Cloth.Name}: {string.Join(", ", r.Missing.Select(p => p.Id))}."
            );

    private static IEnumerable<string> Unlaid(SheathingPlan sheathing) =>
        sheathing.Unlaid.Select(l =>
            $"NOT AMONG THEM: {l}, which could not be laid; what was found says why."
        );

    public static ListSheet Strikes(BottomPlan plan, SheathingPlan sheathing)
    {
        LengthUnit unit = plan.Job.Units;
        return new(
            new(
                "Cloth: where to strike each piece",
                "both sides",
                SheetWords.Unit(unit),
                null,
                Cautions.Cloth
            ),
            [
                "Along the roll from where the piece begins, then square across from the roll's edge that the cutting sheet draws below: its lower edge and its upper edge. A batten through the marks is the line to cut; laps and excess are on it.",
                .. First(sheathing, unit),
            ],
            [
                new("piece", 12, false),
                new("roll", 8),
                new("along", 16),
                new("lower edge", 16),
                new("upper edge", 16),
            ],
            [
                .. SheathingTables
                    .AllStrikes(sheathing, unit)
                    .Select(r =>
                        ImmutableArray.Create(
                            r.Piece.Piece.Id,
                            NumberText.Trimmed(r.Roll.Number, 0),
                            LengthText.PaperNumber(r.AlongMm, unit),
                            LengthText.PaperNumber(r.LowMm, unit),
                            LengthText.PaperNumber(r.HighMm, unit)
                        )
                    ),
            ]
        );
    }

    /// <summary>How the line that is laid first is struck on each piece.</summary>
    private static IEnumerable<string> First(SheathingPlan sheathing, LengthUnit unit)
    {
        string[] told =
        [
            .. SheathingTables
                .Rolls(sheathing)
                .SelectMany(r => r.Roll.Pieces)
                .Where(p => SheathingTables.FirstLine(p) is not null)
                .Select(p =>
                    $"{p.Piece.Id} {LengthText.ForPaper(SheathingTables.FirstLine(p)!.Value, unit)} across"
                    + (
                        SheathingTables.Cross(p) is { } cross
                            ? $", its cross {LengthText.ForPaper(cross - p.FromMm, unit)} along"
                            : ""
                    )
                ),
        ];
        if (told.Length > 0)
        {
            yield return $"The line to be laid first, straight along the piece in chalk or thread, and on it a cross to bring it to its place: {string.Join("; ", told)}.";
        }
    }

    public static ListSheet Lines(BottomPlan plan, SheathedLayer layer, SheathedSide side)
    {
        LengthUnit unit = plan.Job.Units;
        return new(
            new(
                "Cloth: lines to draw before wetting out",
                $"{SheathingWords.Sides(side)}, {SheathingWords.Of(layer)}",
                SheetWords.Unit(unit),
                null,
                Cautions.Cloth
            ),
            [
                "On the face that the cloth lies on, taped along it athwart at each station: from the keel's edge and from the chine. Pencil, no wax. A batten through the marks is the line.",
                $"{(layer.Spec.SideFirst == Side.Starboard ? "Starboard" : "Port")} is laid first, and the other side laps over it. Laid dry and pulled tight it is trimmed to its lines while tacky; wetting begins at the keel and goes downhill; what is left over is rolled, never folded (common practice, no source).",
                .. SheathingWords.FacesOnTheBoat([layer]),
            ],
            [
                new("line", 26, false),
                new("where", 28, false),
                new("from keel's edge", 14),
                new("from chine", 14),
                new("", 40, false),
            ],
            [
                .. MarkRow
                    .Of(layer, side, unit)
                    .Select(r =>
                        ImmutableArray.Create(
                            r.Line,
                            r.Where,
                            Paper(r.FromKeelMm, unit),
                            Paper(r.FromChineMm, unit),
                            r.Note
                        )
                    ),
            ]
        );
    }

    public static ListSheet Shear(BottomPlan plan, SheathedLayer layer, SheathedSide side)
    {
        LengthUnit unit = plan.Job.Units;
        string over = LengthText.ForPaper(Drape.LiftOverMm, unit);
        return new(
            new(
                "Cloth: how far it is sheared",
                $"{SheathingWords.Sides(side)}, {SheathingWords.Of(layer)}",
                "degrees",
                null,
                Cautions.Cloth
            ),
            [
                SheathingWords.Verdict(layer, side, unit),
                $"More than nought it gathers along the roll, less it draws out. A cloth sheared by less than {NumberText.Trimmed(Drape.FlatDegrees, 1)} degrees lies flat, up to {NumberText.Trimmed(Drape.StrokedDegrees, 1)} it is stroked out along its diagonals, beyond half of the {NumberText.Trimmed(layer.Cloth.LocksAtDegrees, 1)} at which it locks it is asked too much (our own steps, no source: try it dry). Threads are taken to keep their length and to slip nowhere.",
                .. Gathers(side, unit),
                .. SheathingWords.Threads(layer, side),
                $"Lifts: how far a thread pulled tight over {over} would stand off the deepest hollow that it crosses in the bay. Do not pull along it there; stroke from the middle of the hollow.",
            ],
            [
                new("between stations", 18, false),
                new("shear", 10),
                new("by its first line", 12),
                new("by the bottom", 12),
                new("at, of the girth", 12),
                new($"lifts over {over}", 14),
                new("what to do", 40, false),
            ],
            [
                .. side.Bays.Select(b =>
                    ImmutableArray.Create(
                        $"{b.FromStation} and {b.ToStation}",
                        SheathingWords.Signed(b.Shear.Degrees),
                        SheathingWords.Signed(b.Shear.Turning),
                        SheathingWords.Signed(b.Shear.Bulge),
                        SheathingWords.Percent(b.AtPart),
                        LengthText.Fine(b.LiftMm(Drape.LiftOverMm), unit),
                        SheathingWords.ToDo(layer, side, b)
                    )
                ),
            ]
        );
    }

    /// <summary>How much longer the flat cloth's edges are than those of the bottom that they come to lie on: what a builder feels.</summary>
    private static IEnumerable<string> Gathers(SheathedSide side, LengthUnit unit)
    {
        const double toldMm = 5;
        foreach (
            (PanelEdge edge, string name) in new[]
            {
                (PanelEdge.Lower, "keel"),
                (PanelEdge.Upper, "chine"),
            }
        )
        {
            if (side.Edges.Of(edge) is not { } line)
            {
                continue;
            }

            double flat = line.Flat.Zip(line.Flat.Skip(1), (a, b) => a.ChordTo(b)).Sum(),
                hull = line.OnHull.Zip(line.OnHull.Skip(1), (a, b) => a.ChordTo(b)).Sum();
            if (Math.Abs(flat - hull) >= toldMm)
            {
                yield return $"Along the {name} the flat cloth is {LengthText.ForPaper(Math.Abs(flat - hull), unit)} {(flat > hull ? "longer than the boat: it gathers there" : "shorter than the boat: it draws out there")}.";
            }
        }
    }

    private static string Paper(double? mm, LengthUnit unit) =>
        mm is { } m ? LengthText.PaperNumber(m, unit) : "";
}
