using PlankFit.Export.Tables;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Structure;

/// <summary>Bill of materials, stiffness and mass as data.</summary>
public static class StructureTables
{
    public static Table Bill(BottomPlan plan, StructurePlan structure) =>
        TableOf.Build<BillRow>(
            "bill of materials",
            [
                new("what", 12, r => r.Kind),
                new("item", 24, r => r.Item),
                new("for", 24, r => r.For),
                new("amount in the unit beside it", 12, r => r.Amount, 4),
                new("unit", 8, r => r.Unit),
                new("as the sheet has it", 14, r => StructureWords.Shown(r, plan.Job.Units)),
                new("cost", 12, r => r.Cost, 2),
                new("source", 60, r => r.Source),
            ],
            Rows(plan, structure)
        );

    /// <summary>The boards of the plan of cutting go with it where there is one: those to buy with what they cost, and those of the rack.</summary>
    internal static IEnumerable<BillRow> Rows(BottomPlan plan, StructurePlan structure) =>
        plan.Nest is { } nest ? structure.Bill.Concat(BoardRows.Of(nest)) : structure.Bill;

    public static Table Stiffness(StructurePlan structure) =>
        TableOf.Build<(StationStiffness Station, LaidUp Lay)>(
            "stiffness",
            [
                new("station", 10, r => r.Station.Station),
                new("deadrise degrees", 10, r => r.Station.Deadrise, 3),
                new("stack", 40, r => r.Lay.Name),
                new("thickness mm", 10, r => r.Lay.Laminate.ThicknessMm, 3),
                new("mass kg/m2", 10, r => r.Lay.Laminate.KgPerM2, 3),
                new("EI strip along, free, N mm2/mm", 14, r => r.Lay.Laminate.FreeStripAlong, 0),
                new("EI strip along, held, N mm2/mm", 14, r => r.Lay.Laminate.TwistHeldAlong, 0),
                new("EI strip across, free, N mm2/mm", 14, r => r.Lay.Laminate.FreeStripAcross, 0),
                new("D between stringers, N mm", 14, r => r.Lay.Laminate.BetweenStringers, 0),
                new("span mm", 10, r => r.Station.SpanMm, 1),
                new("deflection mm", 10, r => r.Lay.DeflectionMm, 4),
            ],
            structure.Stations.SelectMany(s => s.Lays.Select(l => (s, l)))
        );

    public static Table Mass(StructurePlan structure) =>
        TableOf.Build<LayerMass>(
            "mass",
            [
                new("layer", 24, l => l.Layer),
                new("area m2", 10, l => l.AreaMm2 / 1e6, 3),
                new("mass kg", 10, l => l.Mass?.Kg, 2),
                new("centre x mm", 10, l => l.Mass?.Centre.X, 1),
                new("centre y mm", 10, l => l.Mass?.Centre.Y, 1),
                new("centre z mm", 10, l => l.Mass?.Centre.Z, 1),
                new("how", 50, l => l.Of),
            ],
            structure.Layers
        );
}
