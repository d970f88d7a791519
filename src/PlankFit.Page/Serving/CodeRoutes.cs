using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PlankFit.Pages.Guarding;

namespace PlankFit.Pages.Serving;

internal sealed record CodeSaid(string? Code);

/// <summary>Where the code is asked for.</summary>
internal static class CodeRoutes
{
    public static void Map(WebApplication app, Door door)
    {
        app.MapGet(Door.Path, () => RoomFiles.Of("code/code.html"));
        app.MapPost(
            Door.Path,
            (CodeSaid said, HttpContext context) =>
                door.Enter(context, said.Code)
                    ? Results.NoContent()
                    : Results.StatusCode(StatusCodes.Status403Forbidden)
        );
    }
}
