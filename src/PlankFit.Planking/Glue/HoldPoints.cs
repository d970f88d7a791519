using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Wood;

namespace PlankFit.Planking.Glue;

/// <summary>What must be so before a session goes on. The bounds are proposals, no source.</summary>
internal static class HoldPoints
{
    /// <summary>At seams and keel in a dry fit, mm: a proposal, no source.</summary>
    public const double DryFitMm = 0.5;

    /// <summary>The most that is boarded off a skin, mm: a proposal, no source.</summary>
    public const double BoardedMm = 0.5;

    public static ImmutableArray<HoldPoint> BeforeSkin(
        PlankLayerSpec planks,
        int at,
        LengthUnit unit
    ) =>
        [
            new(
                $"every plank below {NumberText.Trimmed(Moisture.GluePercent, 0)} % moisture by meter"
            ),
            new(
                $"dry fit passed: no gap over {LengthText.AtMost(DryFitMm, unit)} at seams and keel (a proposal)"
            ),
            new(
                "planks in their racks in gluing order, ids and arrows in pencil on the outer face, nothing stuck on a glue face"
            ),
            new(
                at > 0
                    ? $"lines to snap and stringer centres carried through under {planks.Name}"
                    : "what lies behind is fair, dry and keyed"
            ),
        ];

    /// <summary>Of a skin that is begun already.</summary>
    public static ImmutableArray<HoldPoint> GoingOn(int at) =>
        [
            new(
                at > 0
                    ? "what is under the planks still to come bonds: within its recoat window, or cured, washed, keyed and dry"
                    : "what lies behind is still clean"
            ),
            new("squeeze-out along the last planks is scraped off before it is hard"),
        ];

    public static ImmutableArray<HoldPoint> AfterSkin(
        StageGround ground,
        PlankLayerPlan layer,
        double down
    )
    {
        CrewSpec crew = ground.Placing.Crew;
        double? cured = ground.Placing.Mix.Clocks.Sandable is { } sandable
            ? down + Math.Ceiling(ClockRun.Minutes(sandable, null, ground.Placing.Day, down))
            : null;
        double? boarded = ground.Placing.Mix.IsTimed
            ? ground.Days.Done(
                cured ?? down,
                2 * layer.AreaMm2 / 1e6 * crew.BoardMinutesPerM2 / crew.Hands
            )
            : null;
        LengthUnit unit = ground.Amounts.Planked.Job.Units;
        string left = LengthText.AtLeast(layer.Planks.ThicknessMm - BoardedMm, unit);
        return
        [
            new("the glue has cured", cured),
            new("fastenings that do not stay are out, squeeze-out scraped off"),
            new(
                $"boarded fair: no more than {LengthText.AtMost(BoardedMm, unit)} off (a proposal), no thinner than {left} anywhere",
                boarded
            ),
            new("dust off, inspected, low places filled"),
        ];
    }

    /// <param name="on">Another cloth, whose own points are said besides, or wood.</param>
    public static ImmutableArray<HoldPoint> BeforeCloth(
        GlueSpec spec,
        (bool Cloth, bool Wood) on,
        LengthUnit unit
    ) =>
        [
            .. on.Cloth
                ? []
                : new HoldPoint[]
                {
                    new(
                        $"the wood below {NumberText.Trimmed(Moisture.GluePercent, 0)} % moisture by meter"
                    ),
                },
            new("the cloth is cut, dry, and lay in its place once; its lines are drawn"),
            .. on.Wood && spec.PrimingGsm is not null
                ? new HoldPoint[]
                {
                    new("the wood is primed, and the cloth goes on while it is wet or tacky"),
                }
                : [],
            new(
                $"the shop is {ShopHeat.AtLeastApart(3, unit)} above the dew point or more (from memory)"
            ),
        ];

    /// <param name="wasOn">All of it, before the plan: then nobody plans when it is trimmed.</param>
    public static ImmutableArray<HoldPoint> AfterCloth(
        BatchPlacing placing,
        TrimSpan[] trims,
        bool wasOn,
        double last,
        bool goesOn
    ) =>
        [
            .. wasOn ? [new("trimmed to its line")]
            : trims.Length == 0
                ? new HoldPoint[]
                {
                    new(
                        "trimmed: the job gives no time in which it is tacky; try it with a knife every ten minutes"
                    ),
                }
            : trims.Select(t => new HoldPoint(
                $"{t.Side.ToString().ToLowerInvariant()} trimmed to its line while tacky",
                t.NotBefore,
                t.NotAfter
            )),
            new("no dry or white places, no air under it; what is found is marked"),
            // Under planks and under coats what holds is said before these.
            .. goesOn
                ? []
                : new HoldPoint[]
                {
                    new(
                        "cured",
                        placing.Mix.Clocks.Sandable is { } sandable
                            ? last
                                + Math.Ceiling(ClockRun.Minutes(sandable, null, placing.Day, last))
                            : null
                    ),
                },
        ];
}
