using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>Which rule stands in the way of even the smallest batch, and by how much it would have to give way.</summary>
internal static class WhyNoBatch
{
    private const double LookMinutes = DayTemperature.Day;
    private const double StepMinutes = 10;

    /// <summary>Nobody cools a shop by more, degrees.</summary>
    private const double MostCooler = 40;

    public static Finding OfPlank(
        BatchPlacing placing,
        WorkDays days,
        string layer,
        PlankShare plank,
        LengthUnit unit
    )
    {
        CrewSpec crew = placing.Crew;
        double spread = crew.MixMinutes + plank.SpreadMinutes,
            down = spread + plank.FastenMinutes;
        List<string> why = [];
        bool fewHands = crew.Hands < CrewSpec.FastenHands;
        if (fewHands)
        {
            why.Add(
                $"a plank is fitted and fastened by {CrewSpec.FastenHands} hands, and the crew has {crew.Hands}"
            );
        }

        if (plank.Grams > placing.MostGrams)
        {
            why.Add(
                $"its {AmountText.Grams(plank.Grams, unit)} are more than the {AmountText.Grams(placing.MostGrams, unit)} that a batch may be: give pot a time at a larger mass, if the data sheet has one"
            );
        }
        else
        {
            why.AddRange(
                Clock(placing, days, "the pot", unit, placing.Mix.Clocks.Pot, plank.Grams, spread)
            );
        }

        why.AddRange(Clock(placing, days, "the film", unit, placing.Mix.Clocks.Film, null, down));
        double shift = days.Shifts.Max(s => s.To - s.From);
        if (shift < down)
        {
            why.Add(
                $"no shift is long enough for one plank: {Whole(down - shift)} minutes are wanting"
            );
        }

        return new(
            Severity.Warning,
            Subject.OfLayer(layer) with
            {
                Key = "crew.hands",
            },
            $"not one plank can be glued down in time: {string.Join("; ", why.DefaultIfEmpty("no shift is left that holds one with the crew's other work"))}. {(fewHands && why.Count == 1 ? "Nothing but another hand will do" : "Cooler, a slower hardener, a shallow tray or more hands, in this order")}; no session is planned from here on"
        )
        {
            Rank = Rank.Know,
        };
    }

    /// <summary>Fewer clamps than one plank takes, or none that ever comes free.</summary>
    /// <returns>Null where clamps are not the reason.</returns>
    public static Finding? OfClamps(ClampLimit? limit, ImmutableArray<PlankWing> wings)
    {
        if (limit is null)
        {
            return null;
        }

        int most = wings.SelectMany(w => w.Planks).Max(p => limit.Wanted([p])),
            all = wings.SelectMany(w => w.Planks).Sum(p => limit.Wanted([p]));
        string called = limit.Held.Crew.ClampsCalled;
        string? why =
            most > limit.OnHand
                ? $"a plank is held by {most} {called} and {limit.OnHand} are on hand: get {most - limit.OnHand} more, or set clamp-spacing of [timber] wider"
            : limit.Cure is null && all > limit.OnHand
                ? $"its planks are held by {all} {called}, {limit.OnHand} are on hand, and nothing says when one may come off: give the glue sandable, off its data sheet"
            : null;
        return why is null
            ? null
            : new(
                Severity.Warning,
                Subject.OfLayer(limit.Layer.Planks.Name) with
                {
                    Key = "crew.clamps-on-hand",
                },
                $"it waits for clamps, and {why}; no session is planned from here on"
            )
            {
                Rank = Rank.Know,
            };
    }

    public static Finding OfCloth(ClothWetting wetting, ClothShare share, LengthUnit unit)
    {
        CrewSpec crew = wetting.Placing.Crew;
        double wet = (share.AreaMm2 / 1e6 * crew.WetMinutesPerM2) + crew.MixMinutes,
            shift = wetting.Days.Shifts.Max(s => s.To - s.From);
        bool alone = crew.Hands < ClothWetting.WetHands;
        string why =
            alone
                ? $"it is wetted out by {ClothWetting.WetHands} hands, and the crew has {crew.Hands}"
            : wet > shift
                ? $"a side takes {Whole(wet)} minutes to wet out without a break and the longest shift has {Whole(shift)}"
            : wetting.Placing.Mix.Clocks.Tacky is null
                ? "no batch of it is out of the pot and down in time"
            : $"no hour of the day leaves {Whole(share.TrimMetres * crew.TrimMinutesPerM)} minutes of a shift to trim it while all of it is tacky, or no batch is down in time";
        string ways = alone ? "" : GivingWay(wetting, share, unit);
        return new(
            Severity.Warning,
            Subject.OfLayer(wetting.Layer) with
            {
                Key = "clock.shifts",
            },
            $"its cloth cannot be laid: {why}. {(ways.Length > 0 ? ways : "No one of hours, warmth and speed does by itself, and no two of them together nor all three: lay it in smaller pieces, or take a slower hardener")}; no session is planned from here on"
        )
        {
            Rank = Rank.Know,
        };
    }

    /// <summary>What would do by itself, or the fewest together where nothing does; empty where not even all do.</summary>
    private static string GivingWay(ClothWetting wetting, ClothShare share, LengthUnit unit)
    {
        if (ClothGivingWay.Of(wetting, share, unit) is { IsEmpty: false } single)
        {
            return $"By itself would do: {string.Join("; or ", single)}";
        }

        if (ClothGivingWay.Together(2, wetting, share, unit) is { IsEmpty: false } pairs)
        {
            return $"No one of hours, warmth and speed does by itself. Two together would, the least first: {string.Join("; or ", pairs.Take(2))}";
        }

        return ClothGivingWay.Together(3, wetting, share, unit) is { IsEmpty: false } all
            ? $"No one of hours, warmth and speed does by itself, and no two of them together. All three would, the least first: {string.Join("; or ", all.Take(2))}"
            : "";
    }

    /// <summary>Of fairing or a fillet, for which a side in small parts had no time.</summary>
    public static Finding OfFinish(ClothWetting laying, ClothShare share, LengthUnit unit)
    {
        CrewSpec crew = laying.Placing.Crew;
        double grams = Math.Min(crew.LeastGrams, laying.Placing.MostGrams);
        string[] why =
        [
            .. crew.Hands < ClothWetting.WetHands
                ? new[]
                {
                    $"it is laid by {ClothWetting.WetHands} hands, and the crew has {crew.Hands}",
                }
                : [],
            .. Clock(
                laying.Placing,
                laying.Days,
                "the pot",
                unit,
                laying.Placing.Mix.Clocks.Pot,
                grams,
                crew.MixMinutes + (share.Part(200).Amount * crew.WetMinutesPerM2)
            ),
        ];
        return new(
            Severity.Warning,
            Subject.Of(laying.Layer) with
            {
                Key = "clock.shifts",
            },
            $"it cannot be laid: {string.Join("; ", why.DefaultIfEmpty("no batch of it is out of the pot and down within a shift"))}. A slower hardener, a cooler shop or longer shifts; no session is planned from here on"
        )
        {
            Rank = Rank.Know,
        };
    }

    /// <summary>On cloth that must be keyed first, and no clock says when it has cured.</summary>
    public static Finding OfKeying(string layer) =>
        new(
            Severity.Warning,
            Subject.OfLayer(layer) with
            {
                Key = "resin.sandable",
            },
            "the cloth under it must have cured and be keyed first, and the job does not say when its resin may be sanded: neither it nor what comes after it is planned until [resin] has sandable, off its data sheet"
        )
        {
            Rank = Rank.Know,
        };

    private static IEnumerable<string> Clock(
        BatchPlacing placing,
        WorkDays days,
        string name,
        LengthUnit unit,
        ClockLaw law,
        double? grams,
        double wanted
    )
    {
        double best = Best(0);
        if (best >= wanted)
        {
            yield break;
        }

        double cooler = 0;
        while (cooler < MostCooler && Best(cooler) < wanted)
        {
            cooler += 0.5;
        }

        yield return $"{name} gives {Whole(best)} minutes at its best hour and {Whole(wanted)} are wanted"
            + (cooler < MostCooler ? $", {ShopHeat.Apart(cooler, unit)} cooler would do" : "");

        double Best(double degrees)
        {
            DayTemperature day = placing.Day.Warmer(-degrees);
            double most = 0;
            for (double at = days.Working(0); at < LookMinutes; at = days.Working(at + StepMinutes))
            {
                most = Math.Max(most, placing.Life(law, grams, day, at));
            }

            return most;
        }
    }

    private static string Whole(double number) =>
        Math.Round(number).ToString(CultureInfo.InvariantCulture);
}
