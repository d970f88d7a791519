using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PlankFit.Pages.Shelf;

namespace PlankFit.Pages.Serving;

/// <summary>The page itself, and the jobs to choose from.</summary>
internal static class RoomRoutes
{
    /// <summary>The picture that the browser draws itself; bundled only where the program was built with Node.</summary>
    public const string Solid = "solid/solid.js";
    private const string NoSolid = "solid/none.js";

    public static void Map(WebApplication app, OpenJobs jobs)
    {
        app.MapGet(
            "/",
            () =>
                jobs.Shelf is { Paths.Length: 1, NewOnesGoTo: null }
                    ? Results.Redirect("/job/1/")
                    : RoomFiles.Of("choose/choose.html")
        );
        app.MapGet(
            "/jobs",
            () =>
            {
                JobShelf shelf = jobs.Shelf;
                return Enumerable
                    .Range(1, shelf.Paths.Length)
                    .Select(n => new
                    {
                        Address = string.Create(CultureInfo.InvariantCulture, $"/job/{n}/"),
                        Name = shelf.NameOf(n),
                        Id = OpenJob.IdOf(shelf.Paths[n - 1]),
                    });
            }
        );
        app.MapGet(
            "/job/{number:int}/",
            (int number) =>
                number >= 1 && number <= jobs.Shelf.Paths.Length
                    ? RoomFiles.Of("frame/frame.html")
                    : TypedResults.NotFound()
        );
        app.MapGet(
            "/rooms/{**name}",
            (string name) => RoomFiles.Of(name == Solid && !RoomFiles.Has(Solid) ? NoSolid : name)
        );
        app.MapGet("/favicon.ico", () => RoomFiles.Of("frame/mark.svg"));
    }
}
