using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Structure;

/// <summary>What the skins come to, on paper: stacks side by side, stations with the least deadrise first, a coupon to load, masses, the bill, and every constant's source.</summary>
public static class StructureSheets
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, StructurePlan structure)
    {
        List<SheetPage> pages = [];
        if (structure.Governing is { } governing)
        {
            pages.AddRange(Compared(plan.Job, structure, governing).Pages(plan.Job));
            pages.AddRange(Stations(plan, structure).Pages(plan.Job));
            pages.AddRange(Coupon(plan.Job, structure, governing).Pages(plan.Job));
            pages.AddRange(
                BoardStrips.Of(plan.Job, structure.Spec.Coupon, governing).Pages(plan.Job)
            );
        }

        pages.AddRange(Masses(plan, structure).Pages(plan.Job));
        pages.AddRange(Bill(plan, structure).Pages(plan.Job));
        if (structure.Governing is not null)
        {
            pages.AddRange(Constants(structure).Pages(plan.Job));
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    internal static TitleBlock Block(string sheet, string of) =>
        new(sheet, of, "figures", null, Cautions.Strength) { Arrow = "" };

    private static ListSheet Compared(Job job, StructurePlan structure, StationStiffness at)
    {
        LengthUnit unit = job.Units;
        LaidUp first = at.AsPlanned;
        string bent =
            at.SpanMm is { } span && structure.Spec.PressureMPa is { } p
                ? $"Bent: a long panel {LengthText.ForPaper(span, unit)} wide between stringers, held at both so that it cannot turn, under {StructureWords.Pressure(p, unit)}; resting freely it gives five times as much."
            : structure.Spec.PressureMPa is null ? "No panel is bent: [structure] has no pressure."
            : "No panel is bent: neither [structure] nor [[behind]] says how far apart stringers are.";
        return new(
            Block(
                "Stiffness: stacks side by side",
                $"at station {at.Station}, which has the least deadrise"
            ),
            [
                StructureWords.Never,
                $"EI in {StructureWords.StiffnessUnit(unit)}. A strip, free: it may twist and draw in; held: it may not twist. Between stringers: it bends across the stringers alone. Each ply in its own axes, classical laminate theory with bending and stretching coupled.",
                bent,
            ],
            [
                new("stack", 60, false),
                new("thick", 14),
                new("mass", 18),
                new("strip along, free", 14),
                new("held", 14),
                new("strip across, free", 14),
                new("between stringers", 16),
                new("of as planned", 14),
                new("bent", 18),
            ],
            [
                .. at.Lays.Select(l =>
                    ImmutableArray.Create(
                        l.Name,
                        LengthText.FormatExact(
                            Math.Round(l.Laminate.ThicknessMm, 1),
                            LengthUnits.IsMetric(unit) ? LengthUnit.Millimetre : unit
                        ),
                        l.Laminate.KgPerM2 > 0
                            ? StructureWords.PerArea(l.Laminate.KgPerM2, unit)
                            : "-",
                        StructureWords.Stiffness(l.Laminate.FreeStripAlong, unit),
                        StructureWords.Stiffness(l.Laminate.TwistHeldAlong, unit),
                        StructureWords.Stiffness(l.Laminate.FreeStripAcross, unit),
                        StructureWords.Stiffness(l.Laminate.BetweenStringers, unit),
                        StructureWords.Against(
                            l.Laminate.BetweenStringers,
                            first.Laminate.BetweenStringers
                        ),
                        StructureWords.Deflection(l.DeflectionMm, unit)
                    )
                ),
            ]
        );
    }

    private static ListSheet Stations(BottomPlan plan, StructurePlan structure)
    {
        LengthUnit unit = plan.Job.Units;
        string[] skins = [.. plan.PlankLayers.Select(l => l.Planks.Name)];
        return new(
            Block(
                "Stiffness: station by station",
                "the least deadrise first: there the water hits hardest"
            ),
            [
                StructureWords.Never,
                $"EI in {StructureWords.StiffnessUnit(unit)}, with the angles that planks have at mid-girth there: degrees from the line along the hull, aft, towards the chine.",
            ],
            [
                new("station", 12, false),
                new("deadrise", 13),
                .. skins.Select(s => new ListColumn($"{s}, degrees", 16)),
                new("strip along, free", 16),
                new("strip across, free", 16),
                new("between stringers", 16),
                new("widest span", 18),
                new("bent", 16),
            ],
            [
                .. structure.Stations.Select(s =>
                    ImmutableArray.Create([
                        s.Station,
                        NumberText.Padded(s.Deadrise, 1),
                        .. s.Angles.Select(a => NumberText.Padded(a, 1)),
                        StructureWords.Stiffness(s.AsPlanned.Laminate.FreeStripAlong, unit),
                        StructureWords.Stiffness(s.AsPlanned.Laminate.FreeStripAcross, unit),
                        StructureWords.Stiffness(s.AsPlanned.Laminate.BetweenStringers, unit),
                        s.SpanMm is { } span ? LengthText.ForPaper(span, unit) : "-",
                        StructureWords.Deflection(s.AsPlanned.DeflectionMm, unit),
                    ])
                ),
            ]
        );
    }

    private static ListSheet Coupon(Job job, StructurePlan structure, StationStiffness at)
    {
        LengthUnit unit = job.Units;
        CouponSpec coupon = structure.Spec.Coupon;
        return new(
            Block(
                "Stiffness: a coupon to build and load",
                "before the boat is built by these figures"
            ),
            [
                StructureWords.Never,
                .. TooFar(coupon, at, unit),
                $"Glue a piece of the stack up as the bottom will be, planks at their angles, cloth in its place; cure it; saw a strip {LengthText.ForPaper(coupon.WidthMm, unit)} wide along the hull's direction. Lay it on two rests {LengthText.ForPaper(coupon.SpanMm, unit)} apart, hang {StructureWords.Load(coupon.Newtons, unit)} from its middle, stand clear of it, and read how far the middle goes down. Between the first two figures, with the third added, lies what this sheet predicts.",
                "The boards' own stiffness decides most: bend a plain strip of each board first, as the next sheet has it, and put what it gives into [[timber.species]].",
            ],
            [
                new("stack", 60, false),
                new("goes down, held from twisting", 22),
                new("goes down, free", 22),
                new("and by shear", 22),
            ],
            [
                .. Built(at)
                    .Select(l =>
                    {
                        (double free, double held, double shear) = StructureWords.Coupon(
                            coupon,
                            l.Laminate
                        );
                        return ImmutableArray.Create(
                            l.Name,
                            Told(held, shear),
                            Told(free, shear),
                            StructureWords.Deflection(shear, unit)
                        );
                    }),
            ]
        );

        string Told(double bent, double sheared) =>
            bent + sheared > FarOfSpan * coupon.SpanMm
                ? "too far"
                : StructureWords.Deflection(bent, unit);
    }

    /// <summary>Bent by more than this part of its span a strip draws in between its rests, and the beam formulas say too little of it: a proposal, no source.</summary>
    private const double FarOfSpan = 0.1;

    /// <summary>Stacks that a coupon is built of: as planned, and those of several plies.</summary>
    private static IEnumerable<LaidUp> Built(StationStiffness at) =>
        at.Lays.Where((l, i) => i == 0 || l.Laminate.Plies.Length > 1);

    /// <summary>That the load is too great for one of them, and which would do.</summary>
    private static IEnumerable<string> TooFar(
        CouponSpec coupon,
        StationStiffness at,
        LengthUnit unit
    )
    {
        double most = Built(at)
                .Select(l => StructureWords.Coupon(coupon, l.Laminate))
                .Max(c => Math.Max(c.Free, c.Held) + c.Shear),
            good = FarOfSpan * coupon.SpanMm;
        return most <= good
            ? []
            :
            [
                $"NOT UNDER THIS LOAD: a strip that goes down more than a tenth of the way between its rests is not reckoned. Give [structure] a coupon with no more load than {StructureWords.Load(StructureWords.RoundLoad(coupon.Newtons * good / most, unit), unit)}, and lay it again.",
            ];
    }

    private static ListSheet Masses(BottomPlan plan, StructurePlan structure)
    {
        LengthUnit unit = plan.Job.Units;
        string Mm(double mm) => PlankWords.ToCentre(mm, unit);
        IEnumerable<LayerMass> rows = structure.Layers;
        if (structure.Whole is { } whole)
        {
            rows = rows.Append(new("all of it", "", 0, whole));
        }

        return new(
            Block(
                "Mass and centre",
                "both sides, the skins alone: no keel, no frames, no fastenings"
            ),
            [
                "Positions as on the table: along the hull, growing aft; up from the base. Boards of one wood differ by a tenth and more, and resin by as much.",
            ],
            [
                new("layer", 34, false),
                new("area", 16),
                new("mass", 16),
                new("centre, along", 20),
                new("centre, to starboard", 18),
                new("centre, up", 18),
                new("how it is reckoned", 70, false),
            ],
            [
                .. rows.Select(l =>
                    ImmutableArray.Create(
                        l.Layer,
                        l.AreaMm2 > 0 ? PlanWords.Area(l.AreaMm2, unit) : "",
                        l.Mass is { } m ? StructureWords.Mass(m.Kg, unit) : "not known",
                        l.Mass is { } a ? Mm(a.Centre.X) : "",
                        l.Mass is { } b ? Mm(b.Centre.Y) : "",
                        l.Mass is { } c ? Mm(c.Centre.Z) : "",
                        l.Of
                    )
                ),
            ]
        );
    }

    private static ListSheet Bill(BottomPlan plan, StructurePlan structure) =>
        new(
            Block("Bill of materials", "both sides"),
            [
                "Cost only where a price is given, in whatever the prices are in. Amounts are as they come; order whole rolls, boards and containers.",
            ],
            [
                new("what", 18, false),
                new("item", 34, false),
                new("for", 30, false),
                new("amount", 16),
                new("unit", 10, false),
                new("cost", 14),
                new("where the figure comes from", 70, false),
            ],
            [
                .. StructureTables
                    .Rows(plan, structure)
                    .Select(r =>
                        ImmutableArray.Create(
                            r.Kind,
                            r.Item,
                            r.For,
                            StructureWords.Amount(r, plan.Job.Units).Amount,
                            StructureWords.Amount(r, plan.Job.Units).Unit,
                            r.Cost is { } cost ? NumberText.Padded(cost, 2) : "",
                            r.Source
                        )
                    ),
            ],
            Bold: false
        );

    private static ListSheet Constants(StructurePlan structure) =>
        new(
            Block("Stiffness: constants and their sources", "what all of it goes by"),
            [StructureWords.Never],
            [new("what", 80, false), new("value", 60, false), new("source", 80, false)],
            [.. structure.Constants.Select(c => ImmutableArray.Create(c.What, c.Value, c.Source))],
            Bold: false
        );
}
