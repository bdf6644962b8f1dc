using SheetGen.Tests.Walls;

return args is ["walls", .. string[] rest] ? WallDump.Run(rest) : 0;
