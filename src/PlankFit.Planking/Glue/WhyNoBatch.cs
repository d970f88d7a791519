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
        if (crew.Hands < CrewSpec.FastenHands)
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
            $"not one plank can be glued down in time: {string.Join("; ", why.DefaultIfEmpty("no shift is left that holds one with the crew's other work"))}. Cooler, a slower hardener, a shallow tray or more hands, in this order; no session is planned from here on"
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
        string ways = alone ? "" : string.Join("; or ", ClothGivingWay.Of(wetting, share, unit));
        return new(
            Severity.Warning,
            Subject.OfLayer(wetting.Layer) with
            {
                Key = "clock.shifts",
            },
            $"its cloth cannot be laid: {why}. {(ways.Length > 0 ? $"By itself would do: {ways}" : "No one of hours, warmth and speed does by itself: lay it in smaller pieces, or take a slower hardener")}; no session is planned from here on"
        )
        {
            Rank = Rank.Know,
        };
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
