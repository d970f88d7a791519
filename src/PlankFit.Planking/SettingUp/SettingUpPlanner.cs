using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Keel;

namespace PlankFit.Planking.SettingUp;

/// <summary>Works out what the surface gives for setting up.</summary>
internal static class SettingUpPlanner
{
    public static SettingUpPlan Of(
        SettingUpSpec spec,
        ImmutableArray<FramingSpec> behind,
        BuiltKeel drawn,
        CancellationToken stop
    )
    {
        var findings = new List<Finding>();
        var ground = SettingUpGround.Of(spec, behind, drawn);
        IReadOnlyList<FramePlane> frames = FramePlanes.Of(ground, findings);
        ImmutableArray<FrameSection>.Builder sections =
            ImmutableArray.CreateBuilder<FrameSection>();
        ImmutableArray<RabbetPlace>.Builder rabbet = ImmutableArray.CreateBuilder<RabbetPlace>();
        ImmutableArray<ChinePlace>.Builder chine = ImmutableArray.CreateBuilder<ChinePlace>();
        foreach (FramePlane frame in frames)
        {
            stop.ThrowIfCancellationRequested();
            if (FrameSections.Of(ground, frame) is { } section)
            {
                sections.Add(section);
            }
            else
            {
                findings.Add(SettingUpFindings.NoFrame(frame));
            }

            if (frame.Part is not null)
            {
                // Keel and chine are told where whole frames stand.
                continue;
            }

            if (RabbetPlaces.Of(ground, frame) is { } place)
            {
                rabbet.Add(place);
            }

            if (ChineAt(ground, frame) is { } corner)
            {
                chine.Add(corner);
            }
        }

        var found = new SettingUpPlan(
            spec,
            sections.ToImmutable(),
            rabbet.ToImmutable(),
            [.. StringerPlaces.Of(ground, [.. frames.Where(f => f.Part is null)])],
            chine.ToImmutable(),
            []
        );
        return found with { Findings = [.. findings, .. SettingUpFindings.Of(ground, found)] };
    }

    private static ChinePlace? ChineAt(SettingUpGround ground, FramePlane frame)
    {
        if (ground.Topside is not { } topside)
        {
            return null;
        }

        SectionSpot chine = new SectionCut(ground.Hull.Surface, 0, frame.Plane, frame.U).At(1);
        if (topside.At(chine.U) is not { } at)
        {
            return null;
        }

        Vec2 across = frame.Plane.FlatDirection(at.Normal);
        return new(
            frame.Label,
            frame.PositionMm,
            Math.Atan2(chine.Outward.X, -chine.Outward.Y) * 180 / Math.PI,
            Math.Atan2(-across.Y, across.X) * 180 / Math.PI,
            ground.Corner(at, frame.PositionMm)
        )
        {
            Lap = ground.Spec.Topside!.LapAt(frame.PositionMm),
        };
    }
}
