using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheathing;

/// <summary>Cloth as tables: what to order, pieces, where to strike them on the roll, lines to draw, shear.</summary>
public static class SheathingTables
{
    public static Table Order(BottomPlan plan, SheathingPlan sheathing)
    {
        LengthUnit unit = plan.Job.Units;
        return TableOf.Build<(RollPlan Plan, CutRoll Roll)>(
            "cloth to order",
            [
                new("cloth", 24, r => r.Plan.Cloth.Name),
                new("roll", 6, r => r.Roll.Number),
                new("from", 10, r => r.Roll.OnHand ? "on hand" : "to buy"),
                new("wide", 12, r => LengthText.ForPaper(r.Roll.Roll.WidthMm, unit)),
                new("on it", 12, r => LengthText.ForPaper(r.Roll.Roll.LengthMm, unit)),
                new("used", 12, r => LengthText.ToOrder(r.Roll.UsedMm, unit)),
                new("left", 12, r => SheathingWords.Left(r.Roll, unit)),
                new("g per m2", 9, r => r.Plan.Cloth.MassGsm, 1),
                new("price of a roll", 9, r => r.Roll.Roll.Price, 2),
                new("used mm", 11, r => r.Roll.UsedMm, 2),
            ],
            Rolls(sheathing)
        );
    }

    public static Table Pieces(BottomPlan plan, SheathingPlan sheathing)
    {
        LengthUnit unit = plan.Job.Units;
        return TableOf.Build<(RollPlan Plan, CutRoll Roll, PieceOnRoll Piece)>(
            "cloth pieces",
            [
                new("piece", 11, r => r.Piece.Piece.Id),
                new("side", 11, r => PlankWords.Of(r.Piece.Piece.Side)),
                new("layer", 22, r => Layer(sheathing, r.Piece.Piece).Name),
                new("cloth", 22, r => r.Plan.Cloth.Name),
                new("roll", 6, r => r.Roll.Number),
                new("begins along the roll", 14, r => LengthText.ForPaper(r.Piece.FromMm, unit)),
                new("long", 13, r => LengthText.ForPaper(r.Piece.Piece.LengthMm, unit, RoundTo.Up)),
                new("wide", 13, r => LengthText.ForPaper(r.Piece.Piece.WidthMm, unit, RoundTo.Up)),
                new("lies", 24, r => SheathingWords.Lies(r.Piece)),
                new("bow", 13, r => SheathingWords.Bow(r.Piece)),
                new(
                    "first line from the roll's lower edge",
                    14,
                    r => FirstLine(r.Piece) is { } mm ? LengthText.ForPaper(mm, unit) : ""
                ),
                new(
                    "its cross along the roll",
                    14,
                    r => Cross(r.Piece) is { } mm ? LengthText.ForPaper(mm, unit) : ""
                ),
                new("face", 24, r => SheathingWords.Face(Layer(sheathing, r.Piece.Piece))),
                new("begins mm", 11, r => r.Piece.FromMm, 2),
                new("long mm", 11, r => r.Piece.Piece.LengthMm, 2),
                new("wide mm", 11, r => r.Piece.Piece.WidthMm, 2),
                new("area m2", 9, r => r.Piece.Piece.AreaMm2 / 1e6, 4),
            ],
            Rolls(sheathing).SelectMany(r => r.Roll.Pieces.Select(p => (r.Plan, r.Roll, p)))
        );
    }

    public static Table Strikes(BottomPlan plan, SheathingPlan sheathing)
    {
        LengthUnit unit = plan.Job.Units;
        return TableOf.Build<StrikeRow>(
            "cloth cutting",
            [
                new("piece", 11, r => r.Piece.Piece.Id),
                new("cloth", 22, r => r.Piece.Piece.Cloth),
                new("roll", 6, r => r.Roll.Number),
                new("along the piece", 14, r => LengthText.ForPaper(r.AlongMm, unit)),
                new("lower edge, across", 14, r => LengthText.ForPaper(r.LowMm, unit)),
                new("upper edge, across", 14, r => LengthText.ForPaper(r.HighMm, unit)),
                new("along the roll mm", 11, r => r.Piece.FromMm + r.AlongMm, 2),
                new("lower mm", 11, r => r.LowMm, 2),
                new("upper mm", 11, r => r.HighMm, 2),
            ],
            AllStrikes(sheathing, unit)
        );
    }

    public static Table Lines(BottomPlan plan, SheathingPlan sheathing)
    {
        LengthUnit unit = plan.Job.Units;
        return TableOf.Build<MarkRow>(
            "cloth lines",
            [
                new("layer", 22, r => r.Layer.Name),
                new("sides", 12, r => SheathingWords.Sides(r.Side)),
                new("line", 24, r => r.Line),
                new("where", 26, r => r.Where),
                new("from keel's edge", 14, r => Paper(r.FromKeelMm, unit)),
                new("from chine", 14, r => Paper(r.FromChineMm, unit)),
                new("what", 40, r => r.Note),
                new("from keel's edge mm", 11, r => r.FromKeelMm, 2),
                new("from chine mm", 11, r => r.FromChineMm, 2),
            ],
            sheathing.Layers.SelectMany(l => l.Sides.SelectMany(s => MarkRow.Of(l, s, unit)))
        );
    }

    public static Table Shear(BottomPlan plan, SheathingPlan sheathing)
    {
        LengthUnit unit = plan.Job.Units;
        return TableOf.Build<(SheathedLayer Layer, SheathedSide Side, BayShear Bay)>(
            "cloth shear",
            [
                new("layer", 22, r => r.Layer.Name),
                new("sides", 12, r => SheathingWords.Sides(r.Side)),
                new("from station", 11, r => r.Bay.FromStation),
                new("to station", 11, r => r.Bay.ToStation),
                new("shear degrees", 10, r => r.Bay.Shear.Degrees, 2),
                new("by its first line degrees", 10, r => r.Bay.Shear.Turning, 2),
                new("by the bottom degrees", 10, r => r.Bay.Shear.Bulge, 2),
                new("part of the girth", 10, r => r.Bay.AtPart, 2),
                new("what to do", 34, r => SheathingWords.ToDo(r.Layer, r.Side, r.Bay)),
                new(
                    $"lifts over {LengthText.ForPaper(Drape.LiftOverMm, unit)}",
                    12,
                    r => LengthText.Fine(r.Bay.LiftMm(Drape.LiftOverMm), unit)
                ),
                new("lifts mm", 9, r => r.Bay.LiftMm(Drape.LiftOverMm), 2),
            ],
            sheathing.Layers.SelectMany(l => l.Sides.SelectMany(s => s.Bays.Select(b => (l, s, b))))
        );
    }

    /// <summary>Across the roll, of a piece that the first line runs along; null where it does not come on it.</summary>
    internal static double? FirstLine(PieceOnRoll piece) =>
        piece.Piece is { FirstAlongRoll: true, Cross.Y: var y }
        && y >= 0
        && y <= piece.Piece.WidthMm
            ? piece.OnRoll(piece.Piece.Cross).Y
            : null;

    internal static double? Cross(PieceOnRoll piece) =>
        piece.Piece.Cross is var cross
        && cross.X >= 0
        && cross.X <= piece.Piece.LengthMm
        && cross.Y >= 0
        && cross.Y <= piece.Piece.WidthMm
            ? piece.OnRoll(cross).X
            : null;

    internal static IEnumerable<(RollPlan Plan, CutRoll Roll)> Rolls(SheathingPlan sheathing) =>
        sheathing.Rolls.SelectMany(p => p.Rolls.Select(r => (p, r)));

    internal static IEnumerable<StrikeRow> AllStrikes(SheathingPlan sheathing, LengthUnit unit) =>
        Rolls(sheathing)
            .SelectMany(r => r.Roll.Pieces.SelectMany(p => StrikeRow.Of(r.Roll, p, unit)));

    internal static SheathedLayer Layer(SheathingPlan sheathing, ClothPiece piece) =>
        sheathing.Layers.First(l => l.Number == piece.Layer);

    private static TableCell Paper(double? mm, LengthUnit unit) =>
        mm is { } m ? LengthText.ForPaper(m, unit) : TableCell.Empty;
}
