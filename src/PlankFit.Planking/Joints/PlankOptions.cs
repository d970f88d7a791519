using System.Collections.Immutable;

namespace PlankFit.Planking.Joints;

/// <summary>Ways of one plank, not more than can be compared.</summary>
/// <param name="IsAll">None was left out.</param>
internal sealed record PlankOptions(ImmutableArray<JointScheme> Ways, bool IsAll)
{
    /// <summary>More ways with one number of joints are not worked out: they are then those of fewer places.</summary>
    private const int MostWays = 3000;
    private const int FewerPlaces = 24;

    /// <summary>Ways with numbers of joints from the least on, evenly spread over all that there are.</summary>
    /// <param name="known">One that is to be among them; null for none.</param>
    public static PlankOptions Of(
        PlankRoom room,
        JointStock stock,
        int least,
        int extra,
        int most,
        JointScheme? known
    )
    {
        if (!room.IsDivided)
        {
            return new([JointScheme.Whole], true);
        }

        bool isAll = true;
        ImmutableArray<JointScheme>.Builder all = ImmutableArray.CreateBuilder<JointScheme>();
        for (int joints = least; joints <= least + extra; joints++)
        {
            ImmutableArray<JointScheme> some =
            [
                .. PlankSchemes.Of(room, stock, joints).Take(MostWays + 1),
            ];
            if (some.Length > MostWays)
            {
                PlankRoom fewer = room with
                {
                    Places = PlankSchemes.Thinned(room.Places, FewerPlaces),
                };
                some = [.. PlankSchemes.Of(fewer, stock, joints).Take(MostWays)];
                isAll = false;
            }

            all.AddRange(some);
        }

        ImmutableArray<JointScheme> ways = PlankSchemes.Thinned(all.ToImmutable(), most);
        return new(
            known is null || ways.Any(w => w.Joints.SequenceEqual(known.Joints))
                ? ways
                : ways.Add(known),
            isAll && ways.Length == all.Count
        );
    }
}
